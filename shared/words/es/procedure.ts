import type { procedure as english } from '../en/procedure.ts';

export const procedure: Record<keyof typeof english, string> = {
  'scope.breakaway': 'Reparación de rotura, desde arriba',
  'scope.dig': 'Excavación: el cuerpo o lo que hay debajo',
  'scope.main': 'Excavación con la tubería principal abierta',
  'scope.replace': 'Excavación: se cambia el hidrante entero',
  'barrel.dry': 'cuerpo seco',
  'barrel.wet': 'cuerpo húmedo',

  'phase.safe': 'Hacerlo seguro',
  'phase.open': 'Desmontar y mirar',
  'phase.ground': 'Bajo el suelo',
  'phase.rebuild': 'Volver a armar',
  'phase.prove': 'Llenar y probar',
  'phase.back': 'Dejarlo listo',

  'step-hazard.traffic': 'Tráfico',
  'step-hazard.lines': 'Cables con corriente',
  'step-hazard.stored-pressure': 'Presión retenida',
  'step-hazard.pinch': 'Puede atrapar',
  'step-hazard.lifting': 'Carga pesada',
  'step-hazard.excavation': 'Excavación',
  'step-hazard.chlorine': 'Cloro',
  'step-hazard.cold': 'Hielo y frío',

  'step.traffic-and-protection': 'Tráfico controlado y equipo de protección puesto',
  'step.traffic-and-protection.caution':
    'Ponga conos y luces antes de pisar la calzada. Casco, gafas, guantes, botas y chaleco reflectante.',
  'step.vehicle-and-lines-safe': 'Cables y agua bajo control; el vehículo se mueve solo después',
  'step.vehicle-and-lines-safe.caution':
    'Deje el vehículo donde está hasta que la compañía eléctrica asegure los cables caídos y el agua esté cerrada: puede sujetar el hidrante y tener tensión. Pruebe el suelo lavado antes de pisarlo.',
  'step.locate-ticket': 'Servicios localizados, número de aviso anotado',
  'step.locate-ticket.caution':
    'Pida la localización, de emergencia si hace falta, antes de abrir el suelo, y espere las marcas. Cerca de ellas excave a mano.',
  'step.isolated': 'Válvula de corte cerrada',
  'step.isolated.caution':
    'Cuente las vueltas y anótelas. Si no cierra, cierre la siguiente y anote quién queda sin agua. Etiquete lo que cerró.',
  'step.pressure-gone': 'Comprobado que no hay presión',
  'step.pressure-gone.caution':
    'El agua a presión puede lanzar la tapa. Afloje despacio una tapa de boca, colóquese a un lado y vea que no salga nada.',
  'step.drained': 'Cuerpo vaciado',
  'step.drained.caution':
    'No desarme nada con agua dentro. Si el drenaje está tapado, haga en su lugar el paso siguiente.',
  'step.pumped-out': 'Drenaje tapado: cuerpo achicado con bomba',
  'step.pumped-out.caution':
    'Solo si el cuerpo no drena. Achique y vea que siga seco: el agua que vuelve a subir viene de la válvula principal.',
  'step.water-lowered': 'Agua bajada por debajo de la rotura',
  'step.water-lowered.caution':
    'Un cuerpo húmedo no drena. Abra la boca más baja y luego achique hasta debajo de la brida. Si el agua vuelve a subir, la válvula no cierra.',
  'step.taken-down': 'Piezas rotas desmontadas',
  'step.taken-down.caution':
    'La sección de bocas pesa: levántela con eslinga o entre dos, y no meta las manos en la brida.',
  'step.stem-freed': 'Vástago liberado',
  'step.stem-freed.caution':
    'Un vástago en tensión puede saltar. No ponga la cara ni las manos en su línea. No tire del vástago inferior ni lo gire: mantiene cerrada la válvula principal.',
  'step.top-opened': 'Parte superior abierta',
  'step.top-opened.caution':
    'Afloje los pernos por turnos y manténgase apartado hasta saber que no hay presión.',
  'step.hidden-damage-checked': 'Revisado en busca de daños ocultos',
  'step.hidden-damage-checked.caution':
    'Busque vástago doblado, cuerpo agrietado, asiento rayado y drenaje tapado, con una luz dentro del cuerpo. Lo que no se arregla desde arriba exige excavar.',
  'step.dug': 'Suelo abierto',
  'step.dug.caution': 'Tierra y máquinas a 2 pies del borde. Si huele a gas: pare, aléjese y llame.',
  'step.trench-protected': 'Lados de la zanja protegidos',
  'step.trench-protected.caution':
    'Desde 5 pies, y antes en mal suelo: talud, entibado o caja, con escalera desde 4 pies. Una persona competente lo juzga cada día, y tras la lluvia o un lavado.',
  'step.in-excavation': 'Trabajo en la zanja empezado',
  'step.in-excavation.caution':
    'Nadie entra antes de proteger los lados y achicar el agua, y nadie está solo dentro.',
  'step.main-opened': 'Tubería principal abierta',
  'step.main-opened.caution':
    'Cerrada por ambos lados y sin presión. El agua de la zanja, por debajo de la abertura; anote los clientes sin agua.',
  'step.old-hydrant-out': 'Hidrante viejo retirado',
  'step.old-hydrant-out.caution':
    'Sujételo con eslinga antes del último perno. Quizá solo la válvula retiene el ramal: no se ponga en su línea; una válvula sin anclar puede moverse.',
  'step.lower-barrel-changed': 'Cuerpo inferior y piezas rotas bajo el suelo cambiados',
  'step.lower-barrel-changed.caution':
    'Pesa, y está en una zanja: use eslinga y no meta las manos en la junta. Junta de cuerpo nueva.',
  'step.main-repaired': 'Tubería principal reparada',
  'step.main-repaired.caution':
    'Limpie con desinfectante tubos, piezas y abrazaderas nuevas antes de ponerlas. Ancle lo que el empuje puede mover.',
  'step.new-hydrant-set': 'Hidrante nuevo a plomo, a su línea de enterrado, mirando a la calle',
  'step.new-hydrant-set.caution':
    'Con eslinga, y guiado con barra, no con los dedos. La línea de enterrado va al nivel del suelo; bocas libres de postes y muros.',
  'step.main-disinfected': 'Tubería principal enjuagada y desinfectada',
  'step.main-disinfected.caution':
    'Si se abrió la tubería: según AWWA C651 y las normas locales, con su muestra. Guantes, gafas y aire fresco para el cloro; no lo mezcle con nada; declore lo que vierta.',
  'step.thrust-block-set': 'Bloque de empuje o anclaje firme',
  'step.thrust-block-set.caution':
    'Contra suelo sin remover y sin tapar el drenaje. No llene antes de que pueda cargar.',
  'step.drain-bed-laid': 'Piedra de drenaje puesta, drenaje abierto',
  'step.drain-bed-laid.caution':
    'Piedra limpia alrededor del drenaje y cubierta, para que la tierra no lo cierre. Un drenaje taponado sigue taponado y con etiqueta.',
  'step.faces-cleaned-gaskets-new': 'Caras limpias y juntas nuevas',
  'step.faces-cleaned-gaskets-new.caution':
    'Protéjase los ojos al raspar. Use solo lubricante apto para agua potable.',
  'step.breakaway-parts-fitted': 'Piezas de rotura nuevas colocadas',
  'step.breakaway-parts-fitted.caution':
    'Brida y acople tienen una posición correcta, y su ranura o muesca un lado: siga el dibujo del fabricante. Nunca reutilice una rota.',
  'step.nozzle-section-set': 'Sección de bocas colocada, mirando a la calle',
  'step.nozzle-section-set.caution':
    'Carga pesada que puede atrapar: guíela con una barra, no con los dedos. Boca grande hacia la calle.',
  'step.tightened-to-torque': 'Pernos apretados en cruz a su par',
  'step.tightened-to-torque.caution':
    'Use el par del fabricante para este modelo; demasiado puede agrietar la brida. En cruz, por pasadas, y al final en círculo.',
  'step.outlet-valves-checked': 'Cada válvula de boca gira libre y cierra',
  'step.outlet-valves-checked.caution': 'Una válvula forzada esconde un vástago doblado: sáquela y mire.',
  'step.thrust-nut-set': 'Tuerca de empuje ajustada, gira libre',
  'step.thrust-nut-set.caution': 'Si se traba, vuelva a desarmar: un vástago forzado esconde una torcedura.',
  'step.top-closed': 'Parte superior cerrada',
  'step.top-closed.caution': 'Siga el orden del fabricante para tapa, sellos y cubierta.',
  'step.refilled-slowly': 'Llenado despacio',
  'step.refilled-slowly.caution':
    'Abra la válvula de corte poco a poco con una tapa floja para que salga el aire. El aire atrapado puede hacer saltar una tapa.',
  'step.leaks-looked-for': 'Buscadas fugas con presión',
  'step.leaks-looked-for.caution':
    'Tapas puestas, hidrante abierto, sin aire: brida, tapa superior, bocas y el suelo alrededor. Colóquese a un lado de las tapas.',
  'step.backfilled': 'Zanja rellena y compactada',
  'step.backfilled.caution':
    'Solo después de ver las juntas con presión. Por capas; nadie dentro cuando se saca la caja.',
  'step.opened-and-closed': 'Abierto y cerrado del todo',
  'step.opened-and-closed.caution':
    'Despacio y hasta el final: a medio abrir, un cuerpo seco suelta agua por el drenaje y lava el suelo. Pare en el tope; no lo fuerce.',
  'step.drain-down-timed': 'Drenado dentro de su tiempo',
  'step.drain-down-timed.caution':
    'Hidrante cerrado, una tapa fuera: la mano en la boca nota succión. En 60 minutos; el agua que queda se hiela y lo rompe.',
  'step.flushed': 'Enjuagado hasta salir clara',
  'step.flushed.caution':
    'El chorro, lejos del tráfico, de la gente y de los cables con corriente. Declore si puede llegar a un arroyo o al drenaje pluvial; sal o arena donde pueda helar.',
  'step.flow-tested': 'Caudal probado',
  'step.flow-tested.caution':
    'Con su formulario, que tiene sus propias precauciones. Se puede aplazar con nombre; todos verán que no se volvió a probar.',
  'step.caps-on': 'Tapas puestas',
  'step.caps-on.caution': 'Con junta, cadenas libres, a mano y un poco más.',
  'step.height-checked': 'Plano de rotura a su altura sobre el suelo',
  'step.height-checked.caution':
    'La que da el fabricante, a menudo de 2 a 6 pulgadas sobre el suelo: más bajo, el próximo golpe rompe el cuerpo.',
  'step.surface-restored': 'Superficie repuesta, o con placa y señal',
  'step.surface-restored.caution': 'Una placa o relleno blando en la calzada se señala hasta pavimentar.',
  'step.marked-off': 'Quitada la marca de fuera de servicio',
  'step.marked-off.caution':
    'Solo con todas las pruebas pasadas y todas las válvulas reabiertas. Se registra con la vuelta al servicio.',
  'step.dispatch-told': 'Central avisada de que volvió',
  'step.dispatch-told.caution': 'Anote quién tomó el aviso. Se registra con la vuelta al servicio.',

  'value.hiddenDamage.nothing': 'No se halló nada',
  'value.hiddenDamage.bent-stem': 'Vástago doblado',
  'value.hiddenDamage.cracked-barrel': 'Cuerpo agrietado',
  'value.hiddenDamage.scored-seat': 'Asiento rayado',
  'value.hiddenDamage.blocked-drain': 'Drenaje tapado',
  'value.hiddenDamage.other': 'Otra cosa',
  'value.trenchProtection.sloped': 'Talud o bancales',
  'value.trenchProtection.shored': 'Entibada',
  'value.trenchProtection.shield': 'Caja de zanja',
  'value.trenchProtection.stable-rock': 'Cortada en roca estable',
  'value.trenchProtection.shallow-and-sound': 'Menos de 5 pies, sin señal de derrumbe',
  'section.repair.hidden': 'Daños ocultos',
  'section.repair.locate': 'Aviso de localización',
  'section.repair.trench': 'Zanja',
  'field.repair.hiddenDamage': 'Qué se halló',
  'field.repair.needsDig': '¿Hay que excavar?',
  'field.repair.dig.locateTicket': 'Número del aviso de localización',
  'field.repair.dig.locateTicket.help': 'Sin él, la excavación queda como incumplimiento.',
  'field.repair.dig.locateClearFrom': 'Aviso válido desde',
  'field.repair.dig.trenchDepthFt': 'Profundidad de la zanja',
  'field.repair.dig.trenchProtection': 'Cómo se sostienen los lados',
  'field.repair.dig.competentPersonWorkerId': 'Persona competente',
  'problem.nothing-and-something': 'No se halló nada o se halló algo: quite uno de los dos.',

  'procedure.title': '{scope}, {barrel}',
  'procedure.decides':
    'Deciden el manual del fabricante, las normas locales y el ejercicio con licencia; si dicen otra cosa, valen ellos.',
  'procedure.type-unknown': 'No se sabe el tipo de este hidrante: se le exigen los pasos de un cuerpo seco.',
  'procedure.next': 'Siguiente',
  'procedure.if-needed': 'Solo si hace falta',
  'procedure.not-here': 'Registrado, aunque este procedimiento no lo pide',
  'procedure.ticked': 'Hecho {when}, {who}',
  'procedure.more': 'Cambiar hora o nombre, añadir nota',
  'procedure.recorded': 'Registrado: {when}, {who}.',
  'procedure.valve-closed':
    'La válvula {valveId} consta cerrada: {when}, {who}. «Hecho» aquí dice que no deja pasar agua.',
  'procedure.elsewhere.flow-test': 'Va en su propio formulario, con las lecturas.',
  'procedure.elsewhere.return-to-service': 'Va en la vuelta al servicio.',
  'procedure.to.flow-test': 'Registrar la prueba de caudal',
  'procedure.to.return-to-service': 'Registrar la vuelta',
  'procedure.water-let-in':
    'Desde entonces volvió a entrar agua. Antes de abrirlo otra vez, se confirma de nuevo lo que exige.',
  'procedure.to-dig': 'Seguir como excavación',
  'procedure.dig-proposed':
    'Un cuerpo agrietado no se arregla desde arriba. Pare aquí, déjelo seguro y siga como excavación.',
  'procedure.dig-note':
    'Los pasos que siguen son los de una excavación. Espera un aviso de localización, y nadie entra antes de sostener los lados.',
  'procedure.too-deep':
    'Desde 5 pies: talud, entibado, caja o roca estable (29 CFR 1926.652(a)(1), de memoria). Revise ambos datos.',
  'procedure.by-model': 'Modelo {model}',
  'procedure.joint':
    '{joint}: {known, select, yes {{torque}.} other {{torque}}}{count, plural, =0 {} other { # pernos, en el orden {order}.}}',
  'procedure.to-ticket': 'Ir al aviso de localización',
  'procedure.opens.left': 'Abre a la izquierda (antihorario), según el registro del modelo.',
  'procedure.opens.right': 'Abre a la derecha (horario), según el registro del modelo.',
  'procedure.lubricant':
    '{where}: {what}{manual, select, none {} other {, según {manual}}}{page, select, none {} other {, página {page}}}.',
  'procedure.sheet-link': 'Imprimir este procedimiento en una hoja',
  'procedure.sheet-any': 'Pasos de la reparación en papel',
  'procedure.in-repair': 'La reparación dice: hecho {when}, {who}.',

  'proof.pumped-out': 'Drenaje taponado: cuerpo achicado',
  'proof.pumped-out.help':
    'Solo en lugar del drenado, con un drenaje taponado que queda así. Marque el hidrante para achicarlo tras cada uso.',
  'proof.disinfected': 'Tubería principal enjuagada y desinfectada',
  'public.proof.pumped-out': 'achique',
  'public.proof.disinfected': 'desinfección',
  'hold.proof-not-deferrable': 'No se puede aplazar tras una reparación: {proof}.',
  'strike.pumped': 'Drenaje taponado: achique el cuerpo tras cada uso',
  'strike.pumped-by': 'Achicado {when}, {byWorkerId}.',
  'strike.breach-corrected': 'Constó un punto de seguridad pasado, y el registro se corrigió',
  'strike.breach-corrected-by': 'Corregido {when} por {byPersonId}: {reason}',

  'breach.take-down-before-safe': '{byWorkerId} desmontó antes de confirmar con nombre: {missing}.',
  'breach.opened-before-safe': '{byWorkerId} abrió antes de confirmar con nombre: {missing}.',
  'breach.main-opened-before-safe':
    '{byWorkerId} abrió la tubería principal antes de confirmar con nombre: {missing}.',
  'breach.dug-before-locate': '{byWorkerId} abrió el suelo antes de registrar con nombre: {missing}.',
  'breach.entered-before-protected':
    '{byWorkerId} empezó en la zanja antes de confirmar con nombre: {missing}.',

  'sheet.title': 'Hoja de reparación',
  'sheet.lead':
    'Para un camión sin teléfono. Escríbala después en el formulario de reparación: mismos pasos, mismo orden.',
  'sheet.print': 'Imprimir',
  'sheet.which': 'Procedimiento',
  'sheet.hydrant': 'Hidrante',
  'sheet.place': 'Lugar',
  'sheet.model': 'Modelo',
  'sheet.printed': 'Impreso {when}. Un registro más nuevo del modelo puede decir otra cosa.',
  'sheet.model-none': 'No se sabe: tome los pares del manual del fabricante.',
  'sheet.date': 'Fecha',
  'sheet.crew': 'Jefe de cuadrilla',
  'sheet.valve': 'Válvula cerrada, vueltas',
  'sheet.ticket': 'N.º de aviso, válido desde',
  'sheet.trench': 'Profundidad, lados sostenidos con',
  'sheet.competent': 'Persona competente',
  'sheet.step': 'Paso',
  'sheet.time': 'Hora',
  'sheet.name': 'Nombre',
  'sheet.stop': 'ALTO. No antes de que haya hora y nombre en: {steps}.',
  'sheet.again': '¿Se abre otra vez después de entrar agua? Antes compruébelo de nuevo, en otra hoja.',
  'sheet.if-dig': 'Si sí: pare, déjelo seguro y use la hoja de excavación.',
  'sheet.joints': 'Uniones de este modelo',
  'sheet.joint': 'Unión',
  'sheet.torque': 'Par',
  'sheet.order': 'Orden',
  'sheet.used': 'Usado, llave n.º',
  'sheet.source': 'Manual, página',
  'sheet.see-joints': 'Pares y orden: en la tabla del final.',
  'sheet.hours': 'Personas y máquinas',
  'sheet.who-or-what': 'Número de persona o código de máquina',
  'sheet.from': 'Desde',
  'sheet.to': 'Hasta',
  'sheet.notes': 'Notas, piezas aparte del juego, fotos tomadas',
  'sheet.kit': 'Juego',
  'sheet.part': '{quantity} de {partNumber} ({description})',
  'sheet.sources':
    'Fuentes: práctica usual del oficio, sin fuente única; localizar antes de excavar, 29 CFR 1926.651(b); zanjas, 1926.651 y .652, desinfección, AWWA C651, drenajes taponados, AWWA M17, altura usual sobre el suelo (de memoria); drenado en 60 minutos, NFPA 25 (de segunda mano). Compruébelas en los libros que tenga.',
  'sheet.footer': '{utility} · {hydrant} · {scope}',
  'sheet.one-hydrant': 'hidrante {hydrantId}',
  'sheet.any-hydrant': 'cualquier hidrante',
};

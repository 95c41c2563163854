import type { packet as english } from '../en/packet.ts';

export const packet: Record<keyof typeof english, string> = {
  'packet.compute.statement.summary':
    'Relación de costos: mano de obra, máquinas, materiales, contratistas, agua y pruebas de caudal, cada línea con su tarifa y su autoridad.',
  'packet.compute.statement.output':
    'líneas con quantity, rateUsd, amountCents (null: no se halló tarifa), authority y arithmetic; sections; totalCents; complete; problems; notes. docs/costs.md describe cada campo.',

  'packet.title': 'Expediente de la reclamación {claimNumber}, revisión {revision}',
  'packet.title-preview': 'Expediente de la reclamación {claimNumber}, vista previa',
  'packet.subject': 'Daño a un hidrante: relación de costos y pruebas',
  'packet.page-of': 'Página {page} de {pages}',
  'packet.preview.banner': 'VISTA PREVIA: no emitido; no es un cobro',
  'packet.preview.short': 'vista previa, no emitido',
  'packet.not-recorded': 'No consta',

  'packet.letter.subject': 'Reclamación {claimNumber}. Daño: {hydrant}',
  'packet.letter.our-claim': 'Nuestra reclamación',
  'packet.letter.revision': 'revisión {revision}',
  'packet.letter.your-file': 'Su expediente',
  'packet.letter.policy': 'Póliza',
  'packet.letter.police-report': 'Informe policial',
  'packet.letter.crash-report': 'Código del informe de choque',
  'packet.letter.vehicle': 'Vehículo',
  'packet.letter.greeting': 'A quien corresponda:',
  'packet.letter.incident':
    'Un vehículo chocó contra {hydrant}{hasPlace, select, yes {, en {place}} other {}}. {known, select, yes {Ocurrió el {at}.} other {No se sabe la hora; el primer registro es del {at}.}} Nuestras cuadrillas lo pusieron en condiciones seguras y lo repararon.',
  'packet.letter.returned': 'Volvió al servicio el {at}.',
  'packet.letter.not-returned': 'Todavía no consta que haya vuelto al servicio.',
  'packet.letter.demand-all':
    'Ese trabajo costó {total}, y le pedimos que lo pague. La relación de costos que sigue da cada línea con su tiempo o cantidad, su tarifa, la autoridad de esa tarifa y la cuenta.',
  'packet.letter.demand-part':
    'Ese trabajo costó {total}. De ello le pedimos que pague {demand}. La relación de costos que sigue da cada línea con su tiempo o cantidad, su tarifa, la autoridad de esa tarifa y la cuenta.',
  'packet.letter.other-demands':
    'Otras reclamaciones por el mismo daño suman {others}. Juntas no superan la relación.',
  'packet.letter.pay': 'Cite la reclamación {claimNumber} con su pago y envíelo a:',
  'packet.letter.enclosed':
    'Con esta carta: relación de costos; relato del daño y de la reparación; cronología; prueba de caudal; fotografías; y la lista de registros de los que todo procede. Las cifras están también en el archivo adjunto {attachment}.',
  'packet.letter.originals':
    'Las fotografías originales, hojas de horas, vales y facturas se conservan y pueden examinarse. Esta carta expone hechos y costos; no es asesoramiento legal.',
  'packet.letter.closing': 'Atentamente,',

  'packet.hydrant.numbered': 'el hidrante {hydrantId}',
  'packet.hydrant.without-number': 'un hidrante sin número en nuestro inventario',
  'packet.hydrant.number': 'Hidrante',
  'packet.hydrant.place': 'Lugar',
  'packet.hydrant.position': 'Posición',
  'packet.hydrant.type': 'Tipo',
  'packet.hydrant.model': 'Modelo',
  'packet.hydrant.installed': 'Instalado',
  'packet.hydrant.last-inspection': 'Última inspección antes del choque',
  'packet.hydrant.last-flow-test': 'Última prueba de caudal antes del choque',

  'packet.statement.title': 'Relación de costos',
  'packet.statement.how':
    'En dólares de los Estados Unidos. Cada línea se redondea una vez, medio centavo hacia arriba; el total es la suma de las líneas. Cada tarifa es la de la edición vigente en la fecha que se indica con ella.',
  'packet.statement.item': 'Concepto',
  'packet.statement.quantity': 'Cantidad',
  'packet.statement.rate': 'Tarifa',
  'packet.statement.amount': 'Importe',
  'packet.statement.subtotal': '{section}, subtotal',
  'packet.statement.total': 'Total',
  'packet.statement.total-incomplete': 'Total de las líneas con importe',
  'packet.statement.incomplete':
    'Esta relación está incompleta: tiene líneas sin importe y su total es menor que el costo.',
  'packet.statement.no-rate': 'Sin tarifa',
  'packet.statement.no-rate-short': 'no hallada',
  'packet.statement.no-rate-long': 'No se halló tarifa para esta línea, por lo que no tiene importe.',
  'packet.statement.fringe': '+ {percent} de cargas',
  'packet.statement.demanded': 'Se cobra en esta reclamación: {demand}',
  'packet.statement.notes': 'Notas a la relación',

  'packet.section.labor': 'Mano de obra',
  'packet.section.machines': 'Máquinas',
  'packet.section.materials': 'Materiales',
  'packet.section.contractors': 'Contratistas',
  'packet.section.water': 'Agua perdida',
  'packet.section.flow-test': 'Prueba de caudal',

  'packet.line.labor': '{description}, trabajador {item}',
  'packet.line.machine-hours': '{description} ({item}), en uso',
  'packet.line.machine-miles': '{description} ({item}), recorrido',
  'packet.line.machine-standby': '{description} ({item}), en espera',
  'packet.line.stock': '{description} ({item}), de almacén',
  'packet.line.invoiced-part': '{description} ({item})',
  'packet.line.handling': 'Manejo, sobre {quantity} de materiales',
  'packet.line.contractor': '{description}, por {item}',
  'packet.line.water': 'Agua perdida: {description}',
  'packet.line.flow-test': 'Prueba de caudal después de la reparación',

  'packet.unit.hour': '{quantity} h',
  'packet.unit.mile': '{quantity} mi',
  'packet.unit.each': '{quantity}',
  'packet.unit.1000-gal': '{quantity} × 1,000 gal',
  'packet.unit.invoice': '{count, plural, one {# factura} other {# facturas}}',
  'packet.per.hour': '{rate} /h',
  'packet.per.mile': '{rate} /mi',
  'packet.per.each': '{rate}',
  'packet.per.1000-gal': '{rate} por 1,000 gal',
  'packet.per.invoice': '{rate}',
  'packet.per.usd': '{rate}',

  'packet.authority.by': '{paper}. Tarifas, edición {edition}, por {rule}.',
  'packet.authority.page': 'página {page}',
  'packet.authority.invoice': 'Factura {edition} de {title}.',
  'packet.date-rule.day-worked': 'el día trabajado',
  'packet.date-rule.strike': 'el día del choque',
  'packet.date-rule.issue': 'el día de la entrega',
  'packet.date-rule.invoice': 'la factura',

  'packet.water.valve-held': 'No se cobra agua: la válvula principal retuvo y no se perdió.',
  'packet.water.none-lost': 'No se cobra agua: no se perdió.',
  'packet.water.recorded': 'El agua perdida se cobra según se midió o registró; su línea dice cómo.',
  'packet.water.not-measured': 'No se cobra agua: la pérdida no se midió.',

  'packet.account.title': 'Daño y reparación',
  'packet.account.hydrant': 'El hidrante',
  'packet.account.damage': 'Lo que se encontró',
  'packet.account.repair': 'Lo que se hizo',
  'packet.account.nothing-found': 'No consta ningún hallazgo en el hidrante.',
  'packet.account.report': 'Informe',
  'packet.account.scope': 'Alcance del daño: {scope}.',
  'packet.account.completed': 'La reparación se terminó el {at}.',
  'packet.account.returned': 'Vuelta al servicio: {hydrant}, con efecto el {at}.',
  'packet.account.steps':
    '{count, plural, one {Consta # paso} other {Constan # pasos}} de la reparación; la cronología da cada uno con su hora.',
  'packet.account.parts': 'Piezas colocadas o usadas:',
  'packet.account.by': 'Por',
  'packet.account.exceptions': 'Excepciones que constan',
  'packet.account.deferred': 'Todavía sin probar de nuevo: {proof}. Aplazado por {by}. Motivo: {reason}.',
  'packet.found.flow': 'Salía agua',
  'packet.found.breakawayFlangeParted': 'Brida de ruptura separada',
  'packet.found.stemCouplingParted': 'Acople del vástago separado',
  'packet.found.nozzleSection': 'Sección de bocas',
  'packet.found.lowerBarrel': 'Cuerpo inferior',
  'packet.found.belowGrade': 'Daño bajo el nivel del suelo',
  'packet.found.mainValve': 'Válvula principal',
  'packet.found.isolationValve': 'Válvula de corte',

  'packet.timeline.title': 'Cronología',
  'packet.timeline.zone':
    'La hora local es la de {timeZone}. Todo figura como lo registraron las personas indicadas; las correcciones están incluidas.',
  'packet.timeline.local': 'Hora local',
  'packet.timeline.utc': 'UTC',
  'packet.timeline.what': 'Qué ocurrió',
  'packet.event.last-seen-sound': 'Visto en buen estado por última vez',
  'packet.event.struck':
    'Golpeado por un vehículo{basis, select, witnessed { (visto por un testigo)} reported { (hora comunicada)} bounded { (entre dos horas conocidas)} other {}}',
  'packet.event.reported': 'Aviso. Fuente: {source}',
  'packet.event.called-out': 'Cuadrilla llamada',
  'packet.event.arrived': 'Llegó la cuadrilla',
  'packet.event.water-shut': 'Agua cerrada',
  'packet.event.marked': 'Marcado fuera de servicio',
  'packet.event.dispatch-told': 'Avisada la central de bomberos',
  'packet.event.valve-closed':
    'Válvula {valveId} cerrada{waterShut, select, yes {; el agua se detuvo} no {; el agua no se detuvo} other {}}',
  'packet.event.valve-reopened': 'Válvula {valveId} reabierta',
  'packet.event.expected-return':
    'Vuelta prevista{known, select, yes { {at}} other { (sin fecha)}}. En espera de: {waitingFor}',
  'packet.event.work-began': 'Comenzó la reparación',
  'packet.event.step-done': '{step}',
  'packet.event.closed-up': 'Hidrante cerrado',
  'packet.event.completed': 'Reparación terminada',
  'packet.event.flow-tested': 'Prueba de caudal',
  'packet.event.proof': 'Comprobación: {proof}. {result}',
  'packet.event.mark-removed': 'Marca retirada',
  'packet.event.returned': 'Vuelto al servicio{takesEffect, select, no { (registrado; sin efecto)} other {}}',

  'packet.flow-test.title': 'Prueba de caudal',
  'packet.flow-test.none': 'No consta ninguna prueba de caudal de este choque.',
  'packet.flow-test.of': 'Hidrante {hydrantId}, {at}',
  'packet.flow-test.method': 'Método',
  'packet.flow-test.one-hydrant': 'Un hidrante: presiones y caudal leídos en el mismo',
  'packet.flow-test.several': 'Presiones leídas en el hidrante clasificado; caudal, en otro',
  'packet.flow-test.static': 'Presión estática',
  'packet.flow-test.residual': 'Presión residual',
  'packet.flow-test.outlets': 'Bocas abiertas',
  'packet.flow-test.metered': 'Caudal medido con contador',
  'packet.flow-test.gauges': 'Manómetros',
  'packet.flow-test.minutes': 'Minutos de descarga',
  'packet.flow-test.tested-by': 'Hecha por',
  'packet.flow-test.measured': 'Caudal medido',
  'packet.flow-test.available': 'Caudal disponible a {target}',
  'packet.flow-test.no-figure': 'Sin cifra: la caída de presión es demasiado pequeña',
  'packet.flow-test.class': 'Clase del hidrante',
  'packet.flow-test.class-chance': 'Clase del hidrante, y probabilidad de que sea la correcta',
  'packet.flow-test.class-color': '{hydrantClass} ({color})',
  'packet.flow-test.no-class': 'Ninguna: la caída de presión es demasiado pequeña',
  'packet.flow-test.rating': 'Clasificado a',
  'packet.flow-test.rating-half': '{residual}, la mitad de la estática (red débil)',
  'packet.flow-test.capacity': 'Capacidad nominal',
  'packet.flow-test.interval': 'Intervalo al {coverage} %',
  'packet.flow-test.between': 'de {low} a {high} {unit}',
  'packet.flow-test.chance': 'Probabilidad de que la clase {hydrantClass} sea la correcta',
  'packet.flow-test.drop': 'Caída de presión',
  'packet.flow-test.drop-share': '{drop}, un {percent} % de la estática (hace falta un {needed} % al menos)',
  'packet.flow-test.notes': 'Notas sobre la prueba:',
  'packet.flow-test.outlet-number': 'Boca',
  'packet.flow-test.size': 'Diámetro',
  'packet.flow-test.basis.measured': 'medido por dentro',
  'packet.flow-test.basis.nominal': 'medida nominal',
  'packet.flow-test.basis.unsaid': 'tomado como medido',
  'packet.flow-test.coefficient': 'Coeficiente',
  'packet.flow-test.diffuser-constant': 'K {constant}',
  'packet.flow-test.diffuser-unit': 'gpm/psi^½, {accuracy}',
  'packet.flow-test.pitot': 'Pitot',
  'packet.flow-test.factor': 'Factor de autobomba',
  'packet.flow-test.flow': 'Caudal',
  'packet.flow-test.kind.hose': 'boca de manguera',
  'packet.flow-test.kind.pumper': 'boca de autobomba',
  'packet.flow-test.kind.diffuser': 'difusor',
  'packet.flow-test.kind.meter': 'contador',
  'packet.flow-test.kind-shape': '{kind}; {shape}',
  'packet.flow-test.accuracy': '±{percent} %',
  'packet.flow-test.accuracy-assumed': '±{percent} % (supuesta)',
  'packet.flow-test.gauge-id': 'Manómetro',
  'packet.flow-test.gauge-reads': 'Leyó',
  'packet.flow-test.gauge-range': 'Escala',
  'packet.flow-test.gauge-accuracy': 'Exactitud',
  'packet.flow-test.gauge-step': 'Leído a',
  'packet.flow-test.gauge-calibrated': 'Calibrado',
  'packet.flow-test.reads.static': 'estática',
  'packet.flow-test.reads.residual': 'residual',
  'packet.flow-test.reads.pitot': 'pitot',
  'packet.flow-test.step-assumed': '{step} (supuesto)',
  'packet.flow-test.interval-how':
    'El intervalo es lo que dejan abierto los manómetros, sus pasos de lectura, los diámetros y los coeficientes, llevado a la capacidad en primer orden (JCGM 100:2008, cláusula 5) al {coverage} %. Causas, de mayor a menor: {causes}.',
  'packet.flow-test.assumed': 'Supuesto donde el registro no lo dice: {assumed}.',
  'packet.assumed.pressure-gauge':
    'estática y residual con un mismo manómetro, ±{percent} % de {rangePsi}, leído a {stepPsi}',
  'packet.assumed.pitot-gauge': 'manómetro de pitot ±{percent} % de {rangePsi}, leído a {stepPsi}',
  'packet.assumed.diameter-measured': 'diámetros medidos por dentro de las bocas, ±{errorIn}',
  'packet.assumed.coefficient': 'coeficientes ±{error}',
  'packet.assumed.pumper-factor': 'factor de autobomba ±{percent} %',
  'packet.assumed.diffuser': 'constante del difusor ±{percent} %',
  'packet.assumed.meter': 'contador ±{percent} %',
  'packet.flow-test.curve-key':
    'Cuadrado: estática. Círculo: la prueba. Triángulo: caudal a {target}. Continua: entre las lecturas; a trazos: proyectada. Gris: donde está el suministro al 95 % según sus lecturas; el corchete es el intervalo a {target}. El caudal se dibuja elevado a 1.85, para que un suministro sea una línea recta.',
  'packet.flow-test.curve-key-bare':
    'Cuadrado: estática. Círculo: la prueba. Continua: entre las lecturas. Nada se proyecta a {target}. Gris: donde está el suministro al 95 % según sus lecturas. El caudal se dibuja elevado a 1.85, para que un suministro sea una línea recta.',
  'packet.flow-test.before-after': 'Antes y después de la reparación',
  'packet.flow-test.before': 'Antes del choque',
  'packet.flow-test.after': 'Después de la reparación',
  'packet.flow-test.no-before':
    'No hay prueba clasificada de este hidrante anterior al choque; no se pueden comparar.',
  'packet.flow-test.no-after':
    'No hay prueba clasificada de este hidrante desde su reparación; no se pueden comparar.',
  'packet.flow-test.day': 'Día',
  'packet.flow-test.history': 'Todas las pruebas registradas del hidrante',
  'packet.flow-test.history-none': 'ninguna',

  'packet.formula.title': 'Cómo se calcularon los caudales',
  'packet.formula.how':
    'Símbolos: Q caudal en gpm; c coeficiente; d diámetro en pulgadas; p presión de pitot en psi; S estática, R residual en psi; Q_F caudal durante la prueba. Las cifras métricas son conversiones exactas.',
  'packet.formula.formula': 'Fórmula',
  'packet.formula.source': 'Fuente, y hasta dónde se siguió',
  'packet.formula.pumper-factor':
    'Q multiplicado por f(p): 0.97, 0.92, 0.89, 0.86, 0.84, 0.83 con p = 2, 3, 4, 5, 6, 7 psi o más; línea recta entre ellos',
  'packet.formula.pressure-drop': '(S − R) / S es al menos {fraction}; con menos no se da clase',
  'packet.formula.hydrant-class': '{bands}; la capacidad redondeada antes al gpm entero',
  'packet.formula.band': '{hydrantClass} desde {fromGpm} gpm',
  'packet.formula.own-rule': 'Reglas de {utility}',
  'packet.formula.cited': '{text} ({marker})',
  'packet.formula.marker.seen': 'leída en su texto',
  'packet.formula.marker.second-hand': 'según la citan otros',
  'packet.formula.marker.memory': 'citada sin su texto a la vista',
  'packet.formula.marker.computed': 'derivada de las fórmulas anteriores',
  'packet.formula.marker.practice': 'práctica común, sin fuente',
  'packet.flow-test.not-a-test':
    'Las lecturas registradas no pueden ser una prueba de caudal; no se da resultado.',

  'packet.photos.title': 'Fotografías',
  'packet.photos.none': 'No constan fotografías.',
  'packet.photos.clocks':
    '«Tomada» es según el reloj del dispositivo que declaró la foto; «cámara» es lo que la cámara escribió en el archivo; «huella registrada» es según el reloj del servidor, y desde entonces los bytes no pudieron cambiar. Se muestran derechas; los originales se conservan como llegaron.',
  'packet.photos.not-included': 'Listadas y no mostradas',
  'packet.photo.title': 'Fotografía {number}. {view}{hasCaption, select, yes {: {caption}} other {}}',
  'packet.photo.taken': 'Tomada el {at}.',
  'packet.photo.taken-unknown': 'No consta cuándo se tomó.',
  'packet.photo.camera': 'Cámara: {at}.',
  'packet.photo.hash-recorded': 'Huella registrada el {at}.',
  'packet.photo.awaited':
    'Pendiente: no incluida. El archivo no había llegado cuando se hizo este expediente.',
  'packet.photo.unsupported-type':
    'No incluida: los archivos de tipo {mediaType} no pueden mostrarse aquí. El original se conserva.',
  'packet.photo.document': 'No incluida: es un documento, no una fotografía. El original se conserva.',
  'packet.photo.corrupt': 'No incluida: el archivo está dañado o incompleto.',
  'packet.photo.hash-differs': 'No incluida: los bytes guardados no tienen la huella registrada.',
  'packet.photo.too-large':
    'No incluida: el archivo es demasiado grande para mostrarlo aquí. El original se conserva.',
  'packet.photo.too-many':
    'No incluida: este expediente ya contiene todas las fotografías que admite. El original se conserva.',

  'packet.manifest.title': 'Registros en que se basa este expediente',
  'packet.manifest.how':
    'Todo en este expediente se calculó a partir de los registros listados aquí y de nada más. Cada uno se guardó una vez, a la hora indicada, y no ha cambiado desde entonces.',
  'packet.manifest.as-of': 'A fecha de',
  'packet.manifest.schema': 'Versión de la forma del expediente',
  'packet.manifest.editions': 'Ediciones de las tarifas',
  'packet.manifest.attachment': 'Archivo adjunto',
  'packet.manifest.submissions': '{count, plural, one {# registro} other {# registros}}',
  'packet.manifest.id': 'Id',
  'packet.manifest.kind': 'Registro',
  'packet.manifest.recorded': 'Guardado (UTC)',
  'packet.manifest.standing':
    '{kind} ({standing, select, corrected {sustituido por una corrección} withdrawn {retirado} other {}})',
  'packet.manifest.exhibits': '{count, plural, one {# anexo} other {# anexos}}',
  'packet.manifest.exhibit': 'N.º',
  'packet.manifest.bytes': 'Bytes',
  'packet.manifest.state': 'Aquí',
  'packet.state.included': 'Mostrada',
  'packet.state.awaited': 'Pendiente',
  'packet.state.not-included': 'Listada',

  'problem.time-zone': 'Indique un huso horario por su nombre IANA, como America/Chicago.',
  'problem.edition-ends-before-start': 'El último día no puede ser anterior al primero.',
  'problem.listed-twice':
    'El código «{code}» figura dos veces. Cada código tiene una sola tarifa en una edición.',
  'problem.authority-not-listed':
    'La autoridad «{authorityId}» no está en la lista de esta edición. Agréguela.',
  'problem.no-rate-edition':
    'Ninguna edición de las tarifas está vigente el {date}. Agregue una que cubra ese día.',
  'problem.two-rate-editions':
    'Dos ediciones de las tarifas rigen desde el mismo día y cubren el {date}: {editions}. Corrija las fechas de una.',
  'problem.no-labor-rate':
    'La edición {editionId} de las tarifas no tiene tarifa para la clase de mano de obra «{laborClass}» el {date}. La línea figura sin importe.',
  'problem.no-machine-rate':
    'La edición {editionId} de las tarifas no tiene tarifa para la máquina «{machineCode}» el {date}. La línea figura sin importe.',
  'problem.no-stock-price':
    'La edición {editionId} de las tarifas no tiene precio para la pieza «{partNumber}» el {date}. La línea figura sin importe.',
  'problem.no-water-rate':
    'La edición {editionId} de las tarifas no tiene precio del agua el {date}. La línea figura sin importe.',
  'problem.machine-needs-miles':
    'La tarifa de la máquina «{machineCode}» es por milla y no hay millas registradas.',
  'problem.machine-needs-hours':
    'La tarifa de la máquina «{machineCode}» es por hora y no hay horas de uso registradas.',
  'problem.handling-not-known':
    'Ninguna edición de las tarifas cubre el día en que se usó la pieza «{partNumber}»; no se cobra manejo por ella.',
  'problem.stretch-too-long':
    'Hay un tramo de más de 31 días registrado para {item}. No se cobra; corrija las horas.',
  'problem.work-claimed-twice':
    'Dos registros reclaman el mismo tiempo ({time}) del trabajador {workerId}. Se cobra una vez.',
  'problem.machine-claimed-twice':
    'El mismo tiempo ({time}) de la máquina «{machineCode}» figura dos veces. Se cobra una vez.',
  'problem.part-recorded-twice':
    'Dos registros citan el mismo vale o factura de la pieza «{partNumber}». Se cobra una vez.',
  'problem.invoice-recorded-twice':
    'Dos registros contienen la factura {invoiceNumber} de {contractor}. Se cobra una vez.',
  'problem.invoice-with-two-amounts':
    'Dos registros contienen la factura {invoiceNumber} de {contractor} con trabajos o importes distintos. Se cobran ambas; revíselas.',
  'problem.water-though-valve-held':
    'Consta una pérdida de {gallons, number} galones y que la válvula principal retuvo sin que saliera agua. El agua no se cobra; corrija uno de los dos datos.',
  'problem.miles-not-billed':
    'No se cobran {miles, number} millas de la máquina «{machineCode}»: su tarifa es por hora.',
  'problem.standby-not-billed':
    'No se cobra la espera ({time}) de la máquina «{machineCode}»: su tarifa no tiene precio para ello.',
  'problem.flow-test-not-billed': 'No se cobra una prueba de caudal que no se hizo a causa de la reparación.',
  'problem.no-flow-test-fee': 'Las tarifas no tienen cargo por prueba de caudal; no se cobra ninguno.',
  'problem.strike-date-taken':
    'No se sabe cuándo ocurrió el choque; las tarifas del día del choque son las del {date}, {basis, select, reported {cuando se avisó} other {el día del primer registro}}.',
  'problem.does-not-foot':
    'La suma no cuadra: figura {printedCents, number, ::scale/0.01 .00} y las líneas suman {sumCents, number, ::scale/0.01 .00}.',
  'problem.statement-incomplete':
    'La relación tiene líneas sin importe. Agregue las tarifas que faltan antes de reclamarla.',
  'problem.nothing-to-demand': 'La relación suma cero: no hay costo que reclamar.',
  'problem.nothing-left-to-demand':
    'Otras reclamaciones de este choque ya reclaman toda la relación: {claims}.',
  'problem.demand-above-statement':
    'No quedan más de {leftCents, number, ::scale/0.01 .00} por reclamar{others, plural, =0 {} other { además de {claims}}}.',
  'problem.strike-not-closed':
    'El choque no está cerrado: ninguna vuelta al servicio ha tenido efecto. El expediente se emite después; ahora puede hacerse una vista previa.',
  'problem.payer-not-known': 'Indique quién debe pagar: la reclamación aún no nombra a nadie.',
  'problem.claim-without-strike':
    'El choque de esta reclamación todavía no está entre los registros. Inténtelo de nuevo cuando haya llegado su informe.',
};

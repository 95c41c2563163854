import type { publicPages as english } from '../en/public.ts';

export const publicPages: Record<keyof typeof english, string> = {
  'public.skip': 'Ir al contenido',
  'public.app-needs-script':
    'Esta página necesita un script para funcionar, y su navegador los tiene desactivados.',
  'public.language-name': 'Español',
  'public.pages': 'Páginas',
  'public.nav.out': 'Fuera de servicio ahora',
  'public.nav.help': 'Cómo leer esta página',
  'public.emergency': '¿Un hidrante golpeado, con fuga o abierto? Llame a cualquier hora:',
  'public.both-units': '{own} ({other})',

  'public.title': 'Hidrantes fuera de servicio',
  'public.description':
    'Qué hidrantes contra incendios de {utility} no se pueden usar ahora, y cuál es el más cercano que sí.',
  'public.headline':
    '{out, plural, one {{count} de {total} hidrantes está fuera de servicio} other {{count} de {total} hidrantes están fuera de servicio}}',
  'public.beyond':
    '{count, plural, one {Se reportó # más que no está en el inventario.} other {Se reportaron # más que no están en el inventario.}}',
  'public.owing':
    '{count, plural, one {# hidrante volvió al servicio sin que se repitieran las pruebas.} other {# hidrantes volvieron al servicio sin que se repitieran las pruebas.}}',
  'public.checked': 'Comprobado:',
  'public.rely': 'No confíe en esta página después de:',
  'public.instant': '{day}, {time} {zone}',
  'public.none-out': 'En esta comprobación, ningún hidrante del inventario constaba como fuera de servicio.',

  'public.stale.title': 'No confíe en esta página',
  'public.stale.old': 'Era válida hasta: {until}. El reloj de su dispositivo marca',
  'public.stale.early':
    'El reloj de su dispositivo va por detrás de la comprobación de esta página ({checked}), así que no puede saber si la página aún es válida. Marca',
  'public.stale.then': 'Lo que sigue se comprobó a esta hora: {checked}. Puede haber cambiado.',
  'public.stale.again': 'Volver a cargar la página',
  'public.stale.call': 'Si sigue igual, llame al {phone}.',
  'public.stale.mark': 'DESACTUALIZADA',

  'public.map': 'Mapa de hidrantes en servicio y fuera de servicio',
  'public.map.alt':
    '{out, plural, =0 {No hay ningún hidrante marcado como fuera de servicio.} one {Una señal numerada marca el hidrante fuera de servicio.} other {# señales numeradas marcan los hidrantes fuera de servicio.}} Cada uno está en la lista de abajo con su lugar. El norte está arriba.',
  'public.map.in': 'en servicio',
  'public.map.out': 'fuera de servicio, con el número de la lista',
  'public.map.north': 'N',
  'public.map.beyond':
    '{count, plural, one {# hidrante queda fuera de este mapa.} other {# hidrantes quedan fuera de este mapa.}}',
  'public.map.show': '{number}: ver {name} en la lista',
  'public.near-map': 'Dónde están los hidrantes en servicio más cercanos',
  'public.near-map.alt': 'El hidrante fuera de servicio está en el centro. {places} El norte está arriba.',
  'public.near-map.place': '{number}: {hydrant}, {away}.',
  'public.near-map.note': 'Los círculos indican la distancia en línea recta.',

  'public.index': 'Hidrantes fuera de servicio, de un vistazo',
  'public.list': 'Fuera de servicio ahora',
  'public.number': 'Número {number} en el mapa.',
  'public.unknown-hydrant': 'Hidrante que no está en el inventario',
  'public.reported-as': 'Reportado como {hydrant}, que no está en el inventario',
  'public.position': 'Posición',
  'public.no-position': 'Esta página no conoce su lugar. Llame al {phone}.',
  'public.since': 'Fuera desde',
  'public.for':
    '{days, plural, =0 {} one {# día } other {# días }}{hours, plural, =0 {} one {# hora} other {# horas}}',
  'public.under-an-hour': 'menos de una hora',
  'public.for-label': '({length} en esta comprobación)',
  'public.cause': 'Causa',
  'public.doing': 'Qué se está haciendo',
  'public.expected': 'Regreso previsto',
  'public.not-expected': 'Aún sin hora prevista',
  'public.overdue': 'esa hora ya pasó',
  'public.rating': 'Clase antes de quedar fuera',
  'public.rating-now': 'Clase',
  'public.class': 'clase {hydrantClass}, {color}',
  'public.no-class': 'sin clase registrada',
  'public.flow': 'caudal nominal {flow}',
  'public.tested': 'probado el {date}',
  'public.untested': 'sin fecha de prueba',
  'public.open-page': 'Historial de {hydrant}',

  'public.nearest': 'Hidrantes en servicio más cercanos',
  'public.nearest-of': 'Hidrantes en servicio más cercanos a {hydrant}',
  'public.nearest.line': 'Las distancias son en línea recta, no por las calles.',
  'public.nearest.none': 'No se puede indicar ninguno, porque no se conoce el lugar.',
  'public.nearest.far':
    'No se puede indicar ninguno: está lejos de los demás hidrantes de la empresa, o su posición es errónea.',
  'public.nearest.no-inventory': 'No se puede indicar ninguno: no se ha cargado el inventario.',
  'public.nearest.nobody': 'No hay otro hidrante en servicio en el inventario.',
  'public.away': '{distance} al {direction}',
  'public.not-retested': 'pruebas no repetidas',
  'public.private': 'hidrante privado',

  'public.maybe-struck': 'puede ser el propio hidrante golpeado',
  'public.rating-after': 'Clase, probada después de quedar fuera de servicio',
  'public.repaired': 'Reparado.',
  'public.held.valve': 'Una válvula que lo corta sigue registrada como cerrada.',
  'public.held.test': 'Aún no ha pasado una prueba que necesita.',
  'public.held.open': 'Se volvió a abrir desde entonces.',
  'public.held.record': 'Consta su vuelta al servicio y los registros no concuerdan; la empresa los revisa.',
  'public.map.out-beyond':
    '{count, plural, one {# hidrante fuera de servicio está lejos de los demás, o su posición es errónea. Está en la lista y no en este mapa.} other {# hidrantes fuera de servicio están lejos de los demás, o sus posiciones son erróneas. Están en la lista y no en este mapa.}}',
  'public.hydrant.curve-note-repaired':
    'Probado después de la reparación. El hidrante no ha vuelto al servicio: arriba se dice por qué.',
  'public.hydrant.curve-note-during': 'Probado después de comenzar el corte que sigue registrado.',

  'public.owing.title': 'De nuevo en servicio, sin repetir las pruebas',
  'public.owing.why':
    'Volvieron al servicio aunque se aplazó una prueba. Considere desconocido lo que pueden dar.',
  'public.owing.line': 'En servicio desde: {day}. Sin probar desde entonces: {proofs}.',

  'public.cause.strike': 'Golpeado por un vehículo',
  'public.cause.main-break': 'Rotura de la tubería principal',
  'public.cause.main-shut': 'Tubería principal cerrada',
  'public.cause.valve-fault': 'Válvula defectuosa',
  'public.cause.hydrant-fault': 'Avería del hidrante',
  'public.cause.frozen': 'Congelado',
  'public.cause.access-blocked': 'Acceso bloqueado',
  'public.cause.construction': 'Obras',
  'public.cause.low-pressure': 'Presión baja',
  'public.cause.valve-closed': 'Su válvula está cerrada',
  'public.cause.other': 'Otra causa',

  'public.stage.reported': 'Reportado. Aún no consta ninguna reparación.',
  'public.stage.shut-off': 'Su agua está cerrada. Espera la reparación.',
  'public.stage.waiting': 'Ahora no se trabaja en él.',
  'public.stage.under-repair': 'En reparación.',
  'public.stage.repaired': 'Reparado. No vuelve al servicio hasta pasar sus pruebas y constar su vuelta.',
  'public.stage.other': 'Aún no consta nada más.',

  'public.waiting.kit': 'Se espera un juego de reparación.',
  'public.waiting.parts': 'Se esperan piezas.',
  'public.waiting.crew': 'Se espera a una cuadrilla.',
  'public.waiting.utility-locate': 'Se espera que marquen las líneas enterradas.',
  'public.waiting.contractor': 'Se espera a un contratista.',
  'public.waiting.weather': 'Se espera a que mejore el tiempo.',
  'public.waiting.other': 'En espera.',

  'public.proof.no-leaks': 'fugas',
  'public.proof.opens-and-closes-fully': 'apertura y cierre completos',
  'public.proof.drains-down': 'vaciado',
  'public.proof.flow-test': 'caudal',

  'public.bearing.N': 'norte',
  'public.bearing.NE': 'noreste',
  'public.bearing.E': 'este',
  'public.bearing.SE': 'sureste',
  'public.bearing.S': 'sur',
  'public.bearing.SW': 'suroeste',
  'public.bearing.W': 'oeste',
  'public.bearing.NW': 'noroeste',

  'public.not-set-up.title': 'Esta página aún no está configurada',
  'public.not-set-up.text':
    'No se ha cargado ninguna lista de hidrantes, así que esta página no puede decir cuáles están en servicio. No debe usarse para buscar uno.',
  'public.not-set-up.call':
    'Para preguntar por un hidrante, o avisar de uno, llame al {phone}. Contestan a cualquier hora.',
  'public.not-set-up.reports': 'Reportados fuera de servicio hasta ahora',

  'public.hydrant.title': 'Hidrante {hydrant}',
  'public.hydrant.out': 'Fuera de servicio',
  'public.hydrant.in': 'En servicio',
  'public.hydrant.owing': 'En servicio, sin repetir las pruebas',
  'public.hydrant.not-in-inventory': 'Este hidrante no está en el inventario.',
  'public.hydrant.type': 'Tipo',
  'public.type.dry-barrel': 'de barril seco',
  'public.type.wet-barrel': 'de barril húmedo',
  'public.type.underground': 'subterráneo',
  'public.type.wall': 'de pared',
  'public.type.standpipe': 'columna de agua',
  'public.type.unknown': 'no se conoce',
  'public.hydrant.now': 'Ahora',
  'public.hydrant.past': 'Interrupciones anteriores',
  'public.hydrant.no-past': 'No consta ninguna.',
  'public.hydrant.past-line': '{cause}: desde {from} hasta {to}.',
  'public.hydrant.past-deferred': 'Volvió sin esta prueba: {proofs}.',
  'public.hydrant.tests': 'Pruebas de caudal',
  'public.hydrant.rated':
    'Capacidad nominal {capacity} a una residual de {pressure}, por la prueba del {date}.',
  'public.hydrant.rated-class': 'Clase por la prueba del {date}.',
  'public.hydrant.range': 'de {low} a {high} {unit}',
  'public.hydrant.interval':
    'Las lecturas de esa prueba admiten {range} (95 %). La clase {hydrantClass} es la correcta con {chance} de seguridad.',
  'public.hydrant.basis':
    'Solo por las lecturas: manómetros, diámetros y coeficientes. Bombas, depósitos y otros consumos cambian lo que sale ese día.',
  'public.hydrant.none-rates': 'Ninguna de estas pruebas clasifica el hidrante.',
  'public.hydrant.last-not-rated':
    'La última prueba, del {date}, tuvo una caída de presión demasiado pequeña para clasificarlo.',
  'public.hydrant.change.loss':
    'Da un {percent} % menos que el {from}: {fromFlow} entonces, {toFlow} el {to}. Las lecturas no lo explican.',
  'public.hydrant.change.possible-loss':
    'El {to} dio un {percent} % menos que el {from}: {fromFlow} entonces, {toFlow} después. Las lecturas podrían explicarlo.',
  'public.hydrant.change.gain': 'Da un {percent} % más que el {from}: {fromFlow} entonces, {toFlow} el {to}.',
  'public.hydrant.change.steady':
    'Da más o menos lo que daba el {from}: {fromFlow} entonces, {toFlow} el {to}.',
  'public.hydrant.change-bare.loss': 'El {to} dio claramente menos que el {from}.',
  'public.hydrant.change-bare.possible-loss':
    'El {to} dio menos que el {from}; las lecturas podrían explicarlo.',
  'public.hydrant.change-bare.gain': 'El {to} dio más que el {from}.',
  'public.hydrant.change-bare.steady': 'El {to} dio más o menos lo que daba el {from}.',
  'public.hydrant.loss': 'Menos agua que antes',
  'public.hydrant.repair': 'Antes y después de la reparación del {date}',
  'public.hydrant.before': 'Antes',
  'public.hydrant.after': 'Después',
  'public.hydrant.day': 'Día',
  'public.hydrant.static': 'Presión estática',
  'public.hydrant.residual': 'Presión residual',
  'public.hydrant.measured': 'Caudal medido',
  'public.hydrant.capacity': 'Capacidad nominal',
  'public.hydrant.interval-label': 'Intervalo al 95 %',
  'public.hydrant.class': 'Clase',
  'public.hydrant.no-figure': 'ninguna',
  'public.hydrant.all-tests': 'Todas las pruebas',
  'public.hydrant.chart':
    'Capacidad nominal a lo largo del tiempo. Las barras son los intervalos al 95 %; las líneas de puntos, donde empiezan las clases. La tabla tiene las cifras.',
  'public.hydrant.readings': 'Estática {static}, residual {residual} con {flow}.',
  'public.hydrant.one': 'Leído en un solo hidrante, lo que es menos seguro.',
  'public.hydrant.curve':
    'Curva de suministro de la prueba del {date}. Cuadrado: presión estática. Círculo: la prueba. Triángulo: el caudal a {pressure}. Gris: donde está el suministro al 95 %.',
  'public.hydrant.curve-note':
    'El suministro el día de la prueba, antes de la interrupción que consta ahora.',
  'public.hydrant.back': 'Todos los hidrantes fuera de servicio',
  'public.hydrant.gone':
    'Ya no consta nada de este hidrante: lo que había aquí se retiró por ser un error. Si está en servicio o no lo dice la lista de hidrantes fuera de servicio.',

  'public.help.title': 'Cómo leer esta página',
  'public.help.says': 'Qué dice',
  'public.help.says.1':
    'Enumera todos los hidrantes contra incendios que la empresa de agua tiene registrados como fuera de servicio, sea cual sea la causa, con los más cercanos que están en servicio.',
  'public.help.says.2':
    'Se vuelve a hacer cada {minutes, plural, one {minuto} other {# minutos}}, aunque nada haya cambiado. Contiene todo lo registrado antes de la hora que sigue a «Comprobado».',
  'public.help.says.3':
    'Tras «No confíe en esta página después de» figura la hora desde la que es demasiado antigua, diga lo que diga. Una copia impresa también vale hasta entonces.',
  'public.help.not': 'Qué no promete',
  'public.help.not.1':
    'Un hidrante que nadie ha reportado no figura en ella. No estar en la lista no es una prueba.',
  'public.help.not.2':
    'Las distancias son líneas rectas sobre el terreno. No tienen en cuenta calles, cercas, vías ni ríos.',
  'public.help.not.3':
    'La clase y el caudal son los de la última prueba registrada. Lo que da hoy un hidrante depende de la tubería que lo alimenta.',
  'public.help.not.4':
    'No se puede enviar un mensaje por esta página. Para avisar de un hidrante, llame al {phone}.',
  'public.help.words': 'Qué significan las palabras',
  'public.help.word.out': 'Fuera de servicio',
  'public.help.word.out-text':
    'No cuente con este hidrante. Consta una interrupción suya que no ha terminado.',
  'public.help.word.since': 'Fuera desde',
  'public.help.word.since-text': 'La hora más temprana que da cualquiera de los reportes.',
  'public.help.word.expected': 'Regreso previsto',
  'public.help.word.expected-text':
    'El último cálculo. No es una promesa, y el hidrante sigue en la lista hasta pasar sus pruebas.',
  'public.help.word.repaired': 'Reparado',
  'public.help.word.repaired-text': 'El trabajo está hecho, las pruebas no. Aún no se puede contar con él.',
  'public.help.word.owing': 'Pruebas no repetidas',
  'public.help.word.owing-text':
    'De nuevo en servicio aunque se aplazó una prueba, por una decisión que consta.',
  'public.help.word.unknown': 'No está en el inventario',
  'public.help.word.unknown-text':
    'Alguien reportó un hidrante que la lista de la empresa no tiene. Se muestra donde se reportó.',
  'public.help.classes': 'Clases de hidrantes',
  'public.help.classes-text':
    'La clase dice cuánta agua dio un hidrante en su última prueba, con una presión residual de {pressure}. Las letras y los colores siguen la norma NFPA 291. La pintura de un hidrante puede ser otra.',
  'public.help.class': 'Clase',
  'public.help.color': 'Color',
  'public.help.capacity': 'Capacidad nominal',
  'public.help.from': '{flow} o más',
  'public.help.between': 'de {from} a {to}',
  'public.help.below': 'menos de {flow}',
  'public.help.times': 'Horas y unidades',
  'public.help.times-text':
    'Las horas son las de la zona horaria de la empresa, {zone}, en formato de 24 horas. Las cantidades van en unidades de EE. UU. y en unidades métricas.',
  'public.help.data': 'Para otros sistemas',

  'public.footer.data': 'Datos para otros sistemas (JSON)',
  'public.footer.license': 'Condiciones de uso de los datos:',
  'public.footer.every':
    '{minutes, plural, one {Se vuelve a hacer cada minuto.} other {Se vuelve a hacer cada # minutos.}}',
  'public.data.note':
    'Compruebe relyUntil antes de cualquier uso. Que un hidrante no figure en la lista no significa que esté en servicio.',

  'public.missing.title': 'Aquí no hay ninguna página',
  'public.missing.text':
    'Puede que la dirección esté mal escrita. Un hidrante solo tiene página propia cuando consta algo de él: una interrupción o una prueba de caudal.',

  'problem.inventory-vanished':
    'No se encontró el inventario, aunque antes se había publicado uno. Se mantiene la última página válida.',
  'problem.inventory-empty':
    'El inventario no tiene ningún hidrante que deba servir. Se mantiene la última página válida.',
  'problem.outage-vanished':
    'La interrupción {outageId} se publicó como abierta y ya no está en ninguna proyección, aunque el libro de registros la conserva. Se mantiene la última página válida.',
  'problem.clock-behind':
    'El reloj de este publicador ({now}) va más de un minuto por detrás de la página publicada ({checkedAt}).',
};

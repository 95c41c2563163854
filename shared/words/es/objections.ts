import type { objections as english } from '../en/objections.ts';

/* eslint-disable no-template-curly-in-string -- a dollar sign before an argument of a sentence is money */
/** Spanish words: what an insurer would likely object, and what would answer it. */
export const objections: Record<keyof typeof english, string> = {
  'objection.no-crash-report': 'No hay número de informe de policía o de choque.',
  'objection.no-crash-report.answer': 'El número del informe, o el informe mismo entre los papeles.',
  'objection.liability-not-shown': 'Nada une el vehículo a una persona: ni conductor, ni placa, ni VIN.',
  'objection.liability-not-shown.answer': 'Placa, VIN o conductor según el informe de policía, o un testigo.',
  'objection.nobody-known': 'La reclamación no dice quién golpeó el hidrante.',
  'objection.nobody-known.answer': 'Quién golpeó el hidrante, hasta donde se sabe.',
  'objection.hit-and-run-no-payer':
    'El conductor huyó y no se conoce, y la reclamación se dirige a un pagador que solo paga por un conductor conocido.',
  'objection.hit-and-run-no-payer.answer':
    'El conductor cuando la policía lo encuentre; o la póliza propia, o la restitución, como pagador.',
  'objection.insurer-unknown':
    'La reclamación es contra la aseguradora de un conductor, y no se nombra ninguna.',
  'objection.insurer-unknown.answer': 'El nombre de la aseguradora, del informe de policía o del conductor.',
  'objection.no-policy-number':
    'No consta ni el número de póliza ni el número de reclamación de la aseguradora.',
  'objection.no-policy-number.answer': 'El número de póliza, o el número de reclamación de la aseguradora.',
  'objection.time-of-strike-unknown': 'No se conoce la hora del golpe.',
  'objection.time-of-strike-unknown.answer': 'La hora según el informe de policía, una llamada o un testigo.',
  'objection.limitation-near':
    '{over, select, yes {El último día para demandar fue el} other {{days, plural, one {Queda # día} other {Quedan # días}} hasta el}} {lastDay}{over, select, yes {,} other {, último día para demandar}} según el ajuste de la empresa ({citation}). Que lo confirme un abogado.',
  'objection.limitation-near.answer':
    'Quién confirmó la fecha con un abogado, y qué se está haciendo a tiempo.',

  'objection.no-photo-before-repair': 'Ninguna foto muestra el daño antes de empezar la reparación.',
  'objection.no-photo-before-repair.answer':
    'Una foto tomada antes de la reparación: de la cuadrilla, la policía o un vecino.',
  'objection.no-scale-in-photos':
    'Ninguna foto muestra cuán grande es el daño: no hay en ella nada de tamaño conocido.',
  'objection.no-scale-in-photos.answer': 'Una foto con una regla, una llave o una mano junto al daño.',
  'objection.photo-far-from-event':
    'Una foto lleva la fecha {takenAt}: más de una hora antes del golpe, o más de tres días después de la vuelta al servicio.',
  'objection.photo-far-from-event.answer': 'Quién la tomó y cuándo; o retire la foto.',
  'objection.camera-clock-differs':
    'La cámara de una foto registró {cameraTime}, y la foto figura como tomada {takenAt}.',
  'objection.camera-clock-differs.answer': 'Cuál de los relojes estaba mal, en una nota junto a la foto.',
  'objection.photo-not-arrived':
    '{count, plural, one {Una foto figura en la lista y su archivo no ha llegado.} other {# fotos figuran en la lista y sus archivos no han llegado.}}',
  'objection.photo-not-arrived.answer': 'Abra la aplicación, con señal, en el teléfono que tomó las fotos.',
  'objection.no-inspection-before':
    '{known, select, yes {La última inspección antes del golpe fue el {last}, más de un año antes.} other {No consta ninguna inspección antes del golpe.}} Puede que el hidrante ya estuviera roto.',
  'objection.no-inspection-before.answer': 'La última hoja de inspección o mantenimiento de este hidrante.',
  'objection.no-flow-test-before':
    '{known, select, yes {La última prueba de caudal antes del golpe fue el {last}, más de cinco años antes.} other {No consta ninguna prueba de caudal antes del golpe.}}',
  'objection.no-flow-test-before.answer': 'La última prueba de caudal de este hidrante.',
  'objection.no-findings-recorded': 'No consta lo que la cuadrilla encontró en el hidrante.',
  'objection.no-findings-recorded.answer': 'Los hallazgos: brida, acople, barril, válvula.',

  'objection.hours-overlap-elsewhere':
    'El trabajador {workerId} está en otro trabajo durante {hours, number} h del mismo tiempo.',
  'objection.hours-overlap-elsewhere.answer': 'La hoja de tiempo, y una corrección del registro equivocado.',
  'objection.hours-recorded-twice':
    'Dos registros reclaman el mismo tiempo ({time}) de {who}. Se factura una vez.',
  'objection.hours-recorded-twice.answer': 'Una corrección del registro equivocado.',
  'objection.premium-without-reason':
    '{lines, plural, one {Una línea de mano de obra se paga} other {# líneas de mano de obra se pagan}} por encima de la tarifa normal, y no se da el motivo.',
  'objection.premium-without-reason.answer':
    'Por qué el trabajo no podía esperar: la llamada, el tráfico, la cobertura contra incendios.',
  'objection.minimum-without-call':
    'Al trabajador {workerId} se le pagan {paid, number} h por {worked, number} h trabajadas, y no consta la hora de la llamada.',
  'objection.minimum-without-call.answer': 'La hora de la llamada, y el convenio que fija el mínimo.',
  'objection.crew-out-of-line':
    'La reparación llevó {hours, number} h de mano de obra; la mediana de {repairs} reparaciones anteriores de este tipo es {usual, number} h.',
  'objection.crew-out-of-line.answer':
    'Qué la hizo más larga: hielo, tráfico, un perno agarrotado, una segunda visita.',
  'objection.work-after-return': '{hours, number} h de trabajo se hicieron después de la vuelta al servicio.',
  'objection.work-after-return.answer':
    'Qué se hizo entonces (limpiar, reponer el pavimento), o una corrección.',
  'objection.work-before-strike': 'Consta trabajo antes del golpe, que fue el {since} o después.',
  'objection.work-before-strike.answer': 'Una corrección de la hora equivocada.',
  'objection.repair-before-isolation':
    'Según el registro, {count, plural, one {se desmontó el hidrante} other {# veces se desmontó el hidrante}} antes de confirmar que el agua estaba cerrada.',
  'objection.repair-before-isolation.answer': 'Cuándo se cerró la válvula, y quién; o una corrección.',
  'objection.dig-before-locate':
    '{count, plural, one {Se abrió el suelo o se entró en la zanja} other {# veces se abrió el suelo o se entró en la zanja}} antes de registrar el aviso de localización o la protección de la zanja.',
  'objection.dig-before-locate.answer':
    'El número del aviso y desde cuándo valía, cómo se sostuvieron los lados y quién lo juzgó; o una corrección.',
  'objection.no-hours-billed': 'No se factura mano de obra, aunque la reparación tiene otros costos.',
  'objection.no-hours-billed.answer': 'Las horas de la cuadrilla.',

  'objection.machine-above-crew':
    'La máquina {machineCode} se factura por {hours, number} h; la cuadrilla estuvo allí {crewHours, number} h.',
  'objection.machine-above-crew.answer':
    '{unattended, select, yes {Por qué tuvo que quedarse cuando la cuadrilla se había ido, o una corrección de sus horas.} other {Quién la manejó las otras horas, o una corrección.}}',
  'objection.machine-by-day': 'La máquina {machineCode} se factura por día.',
  'objection.machine-by-day.answer':
    'Las horas de uso, y la página del libro de tarifas con la tarifa diaria.',
  'objection.standby-billed': 'La máquina {machineCode} se factura en espera.',
  'objection.standby-billed.answer': 'Por qué tuvo que esperar, y la regla que lo permite.',
  'objection.machine-without-operator':
    'La máquina {machineCode} estuvo en uso, y nadie de la cuadrilla figura como su operador.',
  'objection.machine-without-operator.answer':
    'Quién la manejó; o, en la próxima edición del libro de tarifas, que funciona sin nadie al lado.',

  'objection.part-without-paper':
    '{description} ({partNumber}) no tiene {from, select, stock {vale de salida} other {factura}}.',
  'objection.part-without-paper.answer': 'El número del vale, o la factura entre los papeles.',
  'objection.contractor-without-invoice':
    'La factura {invoiceNumber} de {contractor} no está entre los papeles.',
  'objection.contractor-without-invoice.answer': 'La factura.',
  'objection.part-not-of-model': '{description} ({partNumber}) no está en el juego del modelo {model}.',
  'objection.part-not-of-model.answer': 'Por qué hizo falta, o una corrección del número de pieza.',
  'objection.extent-without-finding':
    'Se reparó más que las piezas de ruptura, y no consta ningún daño por debajo de la brida de ruptura.',
  'objection.extent-without-finding.answer': 'Qué se encontró bajo tierra, con una foto.',
  'objection.upgrade-without-reason':
    '{description} ({partNumber}) es mejor que lo destruido, y no se da motivo.',
  'objection.upgrade-without-reason.answer':
    'Por qué: exigido, ya no se fabrica, la ley; o un crédito por mejora.',
  'objection.old-without-counter-calculation':
    'El hidrante tenía {years, number} años, y no se ha calculado la depreciación.',
  'objection.old-without-counter-calculation.answer':
    'Un contracálculo, listo y fuera de la cuenta; y los casos que admiten el costo completo.',
  'objection.install-date-unknown': 'No se sabe cuándo se instaló el hidrante.',
  'objection.install-date-unknown.answer': 'La fecha de instalación en el inventario.',

  'objection.overhead-without-authority':
    '{kind, select, handling {El cargo por manejo de materiales} other {El porcentaje de gastos generales «{share}»}} no nombra una autoridad con su página.',
  'objection.overhead-without-authority.answer':
    'La resolución o el convenio, con su página, en el libro de tarifas.',
  'objection.share-on-schedule-rate':
    'El porcentaje de gastos generales «{share}» se toma sobre máquinas cuya tarifa viene de una lista publicada ({machines}); esa tarifa ya incluye gastos generales.',
  'objection.share-on-schedule-rate.answer':
    'Quite las máquinas de la base del porcentaje en la próxima edición.',
  'objection.edition-not-in-force':
    'El {date} no regía ninguna edición del libro de tarifas, o regían dos a la vez.',
  'objection.edition-not-in-force.answer': 'La edición que regía ese día.',
  'objection.edition-recorded-after-strike':
    'La edición {edition} se introdujo el {recordedAt}, después del golpe.',
  'objection.edition-recorded-after-strike.answer': 'El papel que muestra cuándo se adoptó.',
  'objection.line-without-amount':
    '{lines, plural, one {Una línea no tiene} other {# líneas no tienen}} importe: la cuenta es menor que el costo.',
  'objection.line-without-amount.answer': 'La tarifa que falta.',
  'objection.duplicate-line':
    'Las líneas {first} y {second} facturan dos veces {item}, por el mismo tiempo o número y el mismo importe.',
  'objection.duplicate-line.answer': 'Qué las distingue, o una corrección.',
  'objection.bill-does-not-foot': 'Las líneas no suman el total.',
  'objection.bill-does-not-foot.answer': 'Es un fallo del programa: no envíe el expediente.',
  'objection.flat-price-above-cost':
    'El precio fijo de ${priceCents, number, ::scale/0.01 .00} es más que tiempo y materiales, ${costCents, number, ::scale/0.01 .00}.',
  'objection.flat-price-above-cost.answer': 'La ordenanza que fija el precio, y cómo se determinó.',
  'objection.flat-prices-together': 'Se cobran {lines, number} precios fijos por un solo hidrante.',
  'objection.flat-prices-together.answer':
    'Por qué hizo falta cada uno; o una corrección del alcance que registra una reparación.',
  'objection.minimum-charge-billed': 'La cuenta se elevó hasta el cargo mínimo.',
  'objection.minimum-charge-billed.answer': 'La ordenanza que fija el cargo mínimo.',
  'objection.claim-handling-billed':
    'Se exige el tiempo dedicado a la reclamación; los tribunales lo han negado.',
  'objection.claim-handling-billed.answer': 'La ordenanza que lo permite.',

  'objection.water-though-valve-held': 'La válvula principal aguantó, y consta una cifra de agua perdida.',
  'objection.water-though-valve-held.answer':
    'Una corrección del hallazgo o de la cifra. No se factura agua.',
  'objection.water-seen-though-valve-held':
    'El informe dice que la válvula principal aguantó, y que se vio fluir agua.',
  'objection.water-seen-though-valve-held.answer':
    'Una corrección del informe que diga cuál de las dos cosas es cierta, o un registro del agua perdida. No se factura agua.',
  'objection.water-without-times': 'Se factura agua, y no consta cuánto tiempo corrió.',
  'objection.water-without-times.answer': 'Desde cuándo hasta cuándo corrió, y cómo se sabe.',
  'objection.water-estimate-though-metered':
    'Se factura agua por estimación, aunque existe una cifra medida.',
  'objection.water-estimate-though-metered.answer': 'Facture la cifra medida, o diga por qué no sirve.',
  'objection.water-above-hydrant':
    'El agua facturada supone un caudal del {percent, number}% de lo más que puede dar el hidrante, según {by, select, model {el modelo de la red} frictionless {su ramal sin ninguna fricción} other {su prueba de caudal}}.',
  'objection.water-above-hydrant.answer':
    'La cifra baja; o cómo puede ser así, en el registro del agua, con nombre.',
  'objection.water-best-figure-chosen':
    'El agua se factura según {figure, select, best {la mejor cifra} high {la cifra alta} other {una cifra que alguien eligió}}, que es el {percent, number}% de la baja.',
  'objection.water-best-figure-chosen.answer':
    'La razón en el registro del agua, o un registro que tome la cifra baja.',

  'objections.correct': 'Corregir: {what}{several, select, yes { del {when}} other {}}',
  'objections.add-credit': 'Añadir un abono de {amount}',
};

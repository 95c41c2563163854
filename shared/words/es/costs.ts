import type { costs as english } from '../en/costs.ts';

/** Spanish words: what the cost engine finds while it counts hours, machines and materials. */
export const costs: Record<keyof typeof english, string> = {
  'packet.hours.minimum':
    'Las horas de una llamada por debajo de su mínimo se pagan hasta él: «2 h + 1 h (2 h < 3 h)» son dos horas trabajadas y una más hasta el mínimo de tres.',
  'packet.hours.step':
    'Las horas se cuentan por fracciones: «1 h 7 min + 8 min (1 h 7 min → 5 × 15 min)» es el tiempo trabajado y lo que falta para cinco fracciones.',

  'problem.working-hours-end-before-start':
    'Este horario termina antes de empezar. Indique un turno que pasa de medianoche como dos: hasta las 24:00, y desde las 00:00 del día siguiente.',
  'problem.operator-in-machine-rate':
    '{time} que el trabajador {workerId} pasó operando {machineCode} no se cobran como mano de obra: la tarifa de la máquina incluye a su operador.',
  'problem.operator-hours-not-recorded':
    'La tarifa de {machineCode} incluye a su operador, y el registro tiene sus millas y ninguna hora de uso. Sus horas pueden cobrarse dos veces: registre cuándo se condujo y quién.',
  'problem.flow-test-recorded-twice':
    'Dos registros son de una prueba de flujo del mismo momento. Se cobra una vez: corrija la hora de uno o retírelo.',
  'problem.operator-not-named':
    'La tarifa de {machineCode} incluye a su operador, y el registro no lo nombra. Sus horas pueden cobrarse dos veces: indique el operador.',
  'problem.fuel-in-machine-rate':
    '{partNumber} no se cobra: es combustible, y la tarifa de {machines} lo incluye.',
  'problem.standby-under-half-day':
    '{machineCode} estuvo en espera {time} en {dates}, cuando se usó no más de la mitad de una jornada de {hours} h. Eso no se cobra.',
  'problem.standby-in-day-rate':
    '{machineCode} estuvo en espera {time} en días que se cobran enteros. Eso no se cobra otra vez.',
  'problem.week-hours-twice':
    'Dos registros difieren en las horas que el trabajador {workerId} tuvo en la semana desde el {weekStartsOn}. Se cuentan las menos, {hours} h.',
  'problem.week-hours-other-week':
    'Las horas del trabajador {workerId} se dan para una semana desde el {weekStartsOn}, día en que no empieza ninguna semana de las reglas de pago. No se cuentan: indíquelas desde el día en que empieza la semana.',
  'problem.discount-above-price':
    'El descuento supera el precio de esta línea, {priceCents, number, ::scale/0.01 .00}. Indique el descuento de esta línea como figura en la factura.',
  'problem.invoice-discount-above-price':
    'El descuento de {partNumber} (factura {invoiceNumber}) supera su precio. Se cobra en cero: corrija el registro.',
  'problem.machine-listed-twice':
    'Un mismo registro anota {machineCode} ({description}) {times, number} veces con las mismas {time}. Se cobran {standing, number}. Si era una sola máquina, corrija el registro; si no, diga en la descripción cuál es cada una.',
  'problem.machine-listed-again':
    'Un mismo registro anota {machineCode} ({description}) {times, number} veces con las mismas {time} y el mismo operador, {operatorWorkerId}. Se cobra una vez.',
  'problem.invoice-listed-twice':
    'Un mismo registro anota la factura {invoiceNumber} de {contractor} {times, number} veces con el mismo trabajo ({work}) e importe. Se cobra una vez. Si la factura tiene dos conceptos iguales, diga en el trabajo qué es cada uno.',
  'problem.claim-opened-twice':
    'Esta reclamación se abrió dos veces y no con las mismas palabras; la segunda, como {claimNumber}. Retire la apertura equivocada.',
  'problem.claim-opened-for-two-strikes':
    'Esta reclamación se abrió para dos choques ({strikeId} y {otherStrikeId}). Retire la apertura equivocada: una reclamación es de un solo choque.',
  'problem.party-not-of-strike':
    'La parte que nombra esta reclamación no consta en su choque. Corrija la reclamación: elija una parte de este choque, o ninguna.',
  'problem.demand-without-packet':
    'Consta enviado un cobro de la revisión {revision, number}, y no se emitió ningún expediente de esa revisión. No cuenta como facturado: corríjalo.',
  'problem.demand-of-other-amount':
    'El cobro enviado con la revisión {revision, number} consta por {amountCents, number, ::scale/0.01 .00}, y el expediente cobra {demandCents, number, ::scale/0.01 .00}. No cuenta como facturado: corríjalo.',
  'problem.demand-sent-later-than-recorded':
    'Consta un cobro enviado el {sentOn}, un día que no había llegado cuando se registró. No cuenta como facturado: corríjalo.',
};

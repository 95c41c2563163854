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
};

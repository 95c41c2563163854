import type { packet as english } from '../en/packet.ts';

export const packet: Record<keyof typeof english, string> = {
  'packet.compute.statement.summary':
    'Relación de costos: mano de obra, máquinas, materiales, contratistas, agua y pruebas de flujo, cada línea con su tarifa y su autoridad.',
  'packet.compute.statement.output':
    'líneas con quantity, rateUsd, amountCents (null: no se halló tarifa), authority y arithmetic; sections; totalCents; complete; problems; notes. docs/costs.md describe cada campo.',

  'problem.time-zone': 'Indique un huso horario por su nombre IANA, como America/Chicago.',
  'problem.edition-ends-before-start': 'El último día no puede ser anterior al primero.',
  'problem.listed-twice':
    'El código «{code}» figura dos veces. Cada código tiene una sola tarifa en una edición.',
  'problem.authority-not-listed':
    'La autoridad «{authorityId}» no está en la lista de esta edición. Agréguela.',
  'problem.no-rate-edition':
    'Ninguna edición del tarifario está vigente el {date}. Agregue una que cubra ese día.',
  'problem.two-rate-editions':
    'Dos ediciones del tarifario rigen desde el mismo día y cubren el {date}: {editions}. Corrija las fechas de una.',
  'problem.no-labor-rate':
    'El tarifario ({editionId}) no tiene tarifa para la clase de mano de obra «{laborClass}» el {date}. La línea figura sin importe.',
  'problem.no-machine-rate':
    'El tarifario ({editionId}) no tiene tarifa para la máquina «{machineCode}» el {date}. La línea figura sin importe.',
  'problem.no-stock-price':
    'El tarifario ({editionId}) no tiene precio para la pieza «{partNumber}» el {date}. La línea figura sin importe.',
  'problem.no-water-rate':
    'El tarifario ({editionId}) no tiene precio del agua el {date}. La línea figura sin importe.',
  'problem.machine-needs-miles':
    'La tarifa de la máquina «{machineCode}» es por milla y no hay millas registradas.',
  'problem.machine-needs-hours':
    'La tarifa de la máquina «{machineCode}» es por hora y no hay horas de uso registradas.',
  'problem.handling-not-known':
    'Ninguna edición del tarifario cubre el día en que se usó la pieza «{partNumber}»; no se cobra manejo por ella.',
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
  'problem.flow-test-not-billed': 'No se cobra una prueba de flujo que no se hizo a causa de la reparación.',
  'problem.no-flow-test-fee': 'El tarifario no tiene cargo por prueba de flujo; no se cobra ninguno.',
  'problem.strike-date-taken':
    'No se sabe cuándo ocurrió el choque; las tarifas del día del choque son las del {date}, {basis, select, reported {cuando se avisó} other {el día del primer registro}}.',
  'problem.does-not-foot':
    'La suma no cuadra: figura {printedCents, number, ::scale/0.01 .00} y las líneas suman {sumCents, number, ::scale/0.01 .00}.',
  'problem.statement-incomplete':
    'La relación tiene líneas sin importe. Agregue las tarifas que faltan antes de reclamarla.',
  'problem.nothing-to-demand': 'La relación suma cero: no hay costo que reclamar.',
  'problem.nothing-left-to-demand': 'Otros reclamos de este choque ya reclaman toda la relación: {claims}.',
  'problem.demand-above-statement':
    'No quedan más de {leftCents, number, ::scale/0.01 .00} por reclamar{others, plural, =0 {} other { además de {claims}}}.',
};

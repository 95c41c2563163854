import type { costBook as english } from '../en/costBook.ts';

/* eslint-disable no-template-curly-in-string -- a dollar sign before an argument of a sentence is money */
/** Spanish words: what the rate book can say, and the lines of a bill that come of it. */
export const costBook: Record<keyof typeof english, string> = {
  'packet.section.flat-price': 'Precio fijo',
  'packet.section.fees': 'Cargos',
  'packet.section.overhead': 'Gastos generales',
  'packet.section.claim-handling': 'Tiempo dedicado a la reclamación',
  'packet.section.credits': 'Créditos',
  'packet.section.adjustments': 'Ajustes',

  'packet.line.machine-days': '{description} ({item}), por día',
  'packet.line.sales-tax': 'Impuesto sobre ventas, sobre {quantity} de materiales',
  'packet.line.invoice-tax': 'Impuesto sobre ventas de la factura de {description}',
  'packet.line.flat-price': '{description}',
  'packet.line.job-fee': '{description}',
  'packet.line.overhead': '{description}, sobre {quantity}',
  'packet.line.claim-handling': '{description}, trabajador {item}, en la reclamación',
  'packet.line.credit': 'Crédito: {description}',
  'packet.line.minimum-charge': 'Hasta el cargo mínimo de {rate}',
  'packet.line.total-rounding': 'Redondeo del total a {rate}',

  'packet.unit.day': '{count, plural, one {# día} other {# días}}',
  'packet.unit.100-ft3': '{quantity} × 100 ft³',
  'packet.unit.m3': '{quantity} m³',
  'packet.per.day': '{rate} /día',
  'packet.per.100-ft3': '{rate} por 100 ft³',
  'packet.per.m3': '{rate} por m³',

  'packet.time.working-hours': 'horario de trabajo',
  'packet.time.other-hours': 'fuera del horario de trabajo',
  'packet.time.holiday': 'día feriado',
  'packet.time.week-overtime': 'pasadas las horas de la semana',

  'problem.pay-rules-not-listed':
    'Las reglas de pago "{payRulesId}" no están en esta edición. Agréguelas o deje el campo vacío.',
  'problem.overhead-without-base': 'Diga sobre qué líneas se toma este porcentaje.',
  'problem.overhead-not-listed-before':
    'El porcentaje "{overheadId}" debe estar en la lista antes del que se apoya en él.',
  'problem.claim-handling-needs-ordinance':
    'El tiempo dedicado a la reclamación solo puede exigirse por una ordenanza, resolución o tarifa. Nombre una o déjelo vacío.',
  'problem.credit-above-cost':
    'El crédito "{title}" de ${creditCents, number, ::scale/0.01 .00} es mayor que el costo que queda; se descuentan ${takenCents, number, ::scale/0.01 .00}.',
  'problem.covered-by-flat-price':
    'El precio fijo {tariff} sustituye {lines, plural, one {# línea} other {# líneas}} de {section, select, labor {mano de obra} machines {máquinas} materials {materiales} contractors {contratistas} water {agua} other {pruebas de caudal}}, que por tiempo y materiales serían ${amountCents, number, ::scale/0.01 .00}.',
  'problem.claim-handling-not-billed':
    'Se dedicaron {time} a la reclamación. Están registradas y no se exigen: el libro de tarifas no nombra una ordenanza para ello.',
  'problem.betterment-and-none':
    'Esto dice a la vez que hay una mejora y por qué no la hay. Deje una de las dos.',
};

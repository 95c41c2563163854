import type { problems as english } from '../en/problems.ts';

export const problems: Record<keyof typeof english, string> = {
  'problem.required':
    'Complete este campo{expected, select, string { (texto)} number { (un número)} int { (un número entero)} other {}}.',
  'problem.wrong-type':
    'Debe ser {expected, select, string {texto} number {un número} int {un número entero} boolean {sí o no} array {una lista} object {un grupo de campos} other {otro tipo de valor}}.',
  'problem.too-short': 'Use al menos {minimum} caracteres.',
  'problem.too-long': 'Use como máximo {maximum} caracteres.',
  'problem.too-few': 'Indique al menos {minimum}.',
  'problem.too-many': 'Indique como máximo {maximum}.',
  'problem.below-minimum': 'Debe ser {minimum} o más.',
  'problem.above-maximum': 'Debe ser {maximum} o menos.',
  'problem.not-above': 'Debe ser mayor que {minimum}.',
  'problem.not-multiple': 'Debe ser múltiplo de {divisor}.',
  'problem.not-one-of': 'Elija uno de: {values}.',
  'problem.no-such-choice': 'No es una de las opciones.',
  'problem.unknown-field': 'Aquí no hay un campo «{field}». Revise cómo está escrito o quítelo.',
  'problem.not-valid': 'No es válido.',
  'problem.format-datetime': 'Indique fecha y hora en UTC, como 2026-03-04T02:10:00Z.',
  'problem.format-date': 'Indique una fecha como 2026-03-04.',
  'problem.format-uuid': 'Debe ser un UUID.',
  'problem.format-guid': 'Debe ser un UUID.',
  'problem.format-email': 'Indique un correo electrónico, como nombre@water.example.',
  'problem.format-url': 'Indique una dirección completa, como https://water.example/.',
  'problem.format-regex': 'No tiene la forma correcta.',
  'problem.still-to-come': 'Esto está en el futuro. Revise la fecha y la hora.',
  'problem.year-out-of-range': 'Revise el año: debe estar entre {from} y {to}.',
  'problem.correction-not-trial':
    'Una corrección nunca es una prueba: ocuparía el único lugar de una verdadera. Quite "test".',
  'problem.correction-of-trial':
    'Lo que esto corrige es una prueba, que no cuenta en ninguna parte: no hay nada que corregir.',
  'problem.format-json_string': 'No es JSON válido.',
};

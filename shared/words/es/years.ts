import type { years as english } from '../en/years.ts';

/** Spanish words: figures of the years, for a council. */
export const years: Record<keyof typeof english, string> = {
  'years.nav': 'Años',
  'years.title': 'Hidrantes golpeados, año por año',
  'years.lead':
    'Lo que consta aquí desde el {since}. Los años se cuentan en la zona horaria del servicio de agua.',
  'years.none': 'Aún no consta nada, así que no hay cifras.',
  'years.year': '{year}',
  'years.year.so-far': '{year} hasta ahora',
  'years.year.title': '{year}: hidrantes golpeados',
  'years.year.so-far-title': '{year} hasta ahora: hidrantes golpeados',
  'years.back': 'Todos los años',
  'years.strikes': 'Golpes',
  'years.month': 'Mes',
  'years.days.strike': 'Días fuera, por golpes',
  'years.days.other': 'Días fuera, otras causas',
  'years.days.why':
    'Días dentro del año, sumados sobre los hidrantes. Un hidrante fuera de servicio por dos motivos a la vez cuenta una sola vez.',
  'years.returned': 'De nuevo en servicio',
  'years.still-out': 'Aún fuera de servicio',
  'years.median': 'La mitad volvió en',
  'years.longest': 'El más largo',
  'years.return.why':
    'Desde que quedó fuera hasta que volvió al servicio, de los golpes del año cuyo hidrante ya volvió.',
  'years.length.none': 'ninguno aún',
  'years.billed': 'Facturado',
  'years.recovered': 'Recuperado',
  'years.money.dollars': '{amount, number, ::currency/USD precision-integer}',
  'years.money.kept': 'no se muestra',
  'years.money.why':
    'Redondeado a miles de dólares, por los golpes de un año ya terminado. No se muestra donde menos de {least} reclamaciones forman la suma o una es casi toda ella, porque diría lo que se facturó a alguien o lo que alguien pagó.',
  'years.chart.strikes': 'Golpes por año',
  'years.chart.months': 'Golpes por mes',
  'years.chart.days': 'Días fuera de servicio por año',
  'years.chart.text': 'La tabla tiene las mismas cifras.',
  'years.again': 'Golpeados más de una vez',
  'years.again.why':
    'Hidrantes golpeados en el año que ya lo habían sido antes, según lo que consta desde el {since}, o que lo fueron más de una vez en él.',
  'years.again.none': 'Ninguno.',
  'years.again.hydrant': 'Hidrante',
  'years.again.place': 'Lugar',
  'years.again.in-year': 'En el año',
  'years.again.ever': 'En total, hasta su fin',
  'years.table': 'Los años en cifras',
};

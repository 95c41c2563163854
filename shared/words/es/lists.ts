import type { lists as english } from '../en/lists.ts';

/** Spanish words: lists that are too long for one page, and the areas they are told apart by. */
export const lists: Record<keyof typeof english, string> = {
  'public.not-yet-shown':
    '{count, plural, one {Un aviso recibido desde el {since} aún no está en esta página. Puede haber un hidrante fuera de servicio que ella no nombra: llame al {phone}.} other {# avisos recibidos desde el {since} aún no están en esta página. Puede haber hidrantes fuera de servicio que ella no nombra: llame al {phone}.}}',

  'lists.work': 'Trabajos previstos',
  'lists.work.why': 'Lo previsto puede aplazarse o adelantarse.',
  'lists.work.more':
    '{count, plural, one {Hay # más previsto para después.} other {Hay # más previstos para después.}}',
  'lists.work.calendar': 'Todos, como calendario (iCalendar)',

  'lists.newest': 'Aquí están los {listed} más recientes de {total}. Todos están en las listas de las zonas.',
  'lists.owing.all': 'Los {total} sin repetir las pruebas',
  'lists.areas': 'Zonas de la ciudad',
  'lists.areas.why':
    'La ciudad está dividida en cuadros, con letras de oeste a este y números de norte a sur. Cada uno lleva a todo lo que está fuera de servicio en él.',
  'lists.areas.square': '{code} {count} fuera de servicio',
  'lists.areas.figures': 'Las zonas en cifras',
  'lists.areas.map': 'Los cuadros, cada uno con cuántos hidrantes están fuera de servicio en él',
  'lists.areas.map-alt': 'La tabla de abajo tiene las mismas cifras. El norte está arriba.',
  'lists.area': 'Zona {code}',
  'lists.area.elsewhere': 'Lugar desconocido o fuera de la ciudad',
  'lists.area.around': 'alrededor de {place}',
  'lists.area.out': 'Fuera de servicio',
  'lists.area.hydrants': 'Hidrantes en la zona',
  'lists.area.place': 'Dónde está',
  'lists.area.headline':
    '{out, plural, =0 {Nada está fuera de servicio en la zona {code}} one {Un lugar fuera de servicio en la zona {code}} other {{count} lugares fuera de servicio en la zona {code}}}',
  'lists.area.elsewhere-headline':
    '{out, plural, one {Un lugar fuera de servicio que no está en ningún mapa} other {{count} lugares fuera de servicio que no están en ningún mapa}}',
  'lists.area.of':
    '{hydrants, plural, =0 {El inventario no tiene hidrantes ahí.} one {El inventario tiene un hidrante ahí.} other {El inventario tiene {count} hidrantes ahí.}}',
  'lists.area.none': 'En esta comprobación no constaba ningún hidrante de esta zona como fuera de servicio.',
  'lists.area.part': 'Parte {part} de {parts}, lo más reciente primero',
  'lists.parts': 'Partes de esta lista',
  'lists.part': 'Parte {part}',
  'lists.whole': 'Todas las zonas',
  'lists.gone.title': 'Esta lista ya no se lleva',
  'lists.gone.text':
    'Lo que sigue siendo así está en la página de todos los hidrantes fuera de servicio, o en una lista a la que ella lleva.',
};

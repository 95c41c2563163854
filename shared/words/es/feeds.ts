import type { feeds as english } from '../en/feeds.ts';

/** Spanish words of the feeds for machines. */
export const feeds: Record<keyof typeof english, string> = {
  'feeds.statement': '{count} Comprobado: {checked}. No confíe en esto después de: {until}.',
  'feeds.not-set-up':
    'Sin configurar: no se ha cargado ninguna lista de hidrantes, así que nada de esto dice qué hidrantes están en servicio.',
  'feeds.reported':
    '{count, plural, one {Se reportó # hidrante fuera de servicio.} other {Se reportaron # hidrantes fuera de servicio.}}',

  'feeds.not-yet-shown':
    '{count, plural, one {Un aviso recibido desde el {since} aún no figura aquí. Puede haber un hidrante fuera de servicio que aquí no se nombra: llame al {phone}.} other {# avisos recibidos desde el {since} aún no figuran aquí. Puede haber hidrantes fuera de servicio que aquí no se nombran: llame al {phone}.}}',

  'feeds.title.out': 'Fuera de servicio: {hydrant}',
  'feeds.title.back': 'De vuelta en servicio: {hydrant}',
  'feeds.title.still-out': 'Terminó una causa, sigue fuera de servicio: {hydrant}',
  'feeds.title.unlisted': 'Ya no consta fuera de servicio: {hydrant}',
  'feeds.cause': 'Causa: {cause}.',
  'feeds.since': 'Fuera de servicio desde: {at}.',
  'feeds.ended': 'Esta causa terminó: {at}.',
  'feeds.unlisted': 'Esta causa ya no está en la lista: terminó, o su reporte se retiró o se unió a otro.',
  'feeds.still-out': 'El hidrante sigue fuera de servicio por otra causa.',
  'feeds.expected': 'Regreso previsto: {at}. Es una estimación.',
  'feeds.not-listed': 'Que un hidrante no figure no significa que conste en servicio.',
  'feeds.overdue': 'Se esperaba su regreso: {at}. Esa hora ya pasó.',
  'feeds.not-expected': 'Aún no se ha dado hora para su regreso.',
  'feeds.position': 'Posición: {latitudeDeg, number, ::.00000}, {longitudeDeg, number, ::.00000}.',

  'feeds.alert.title': 'Alertas de {utility}: hidrantes fuera de servicio',
  'feeds.alert.event': 'Hidrante fuera de servicio',
  'feeds.alert.instruction':
    'No cuente con este hidrante. Vea en la página los más cercanos en servicio. Para reportar un hidrante, llame al número indicado aquí.',

  'feeds.calendar.name': '{utility}: hidrantes, regresos previstos y trabajos planificados',
  'feeds.calendar.expected': 'Regreso previsto: {hydrant}',
  'feeds.calendar.work': 'Planificado: {work}. {hydrant}',
  'feeds.calendar.takes-out': 'El hidrante estará fuera de servicio durante este trabajo.',
  'feeds.calendar.stays-in': 'El hidrante seguirá en servicio.',

  'feeds.name.index': 'Todos los canales',
  'feeds.name.snapshot': 'Todo lo de la lista, con los hidrantes en servicio más cercanos (JSON)',
  'feeds.name.geojson': 'Hidrantes fuera de servicio para mapas (GeoJSON)',
  'feeds.name.csv': 'Hidrantes fuera de servicio para hojas de cálculo (CSV)',
  'feeds.name.changes': 'Qué cambió y cuándo (JSON)',
  'feeds.name.openapi': 'Descripción de estas direcciones para programas (OpenAPI)',
  'feeds.name.atom': 'Noticias para lectores de canales (Atom)',
  'feeds.name.jsonFeed': 'Noticias para lectores de canales (JSON Feed)',
  'feeds.name.calendar': 'Regresos previstos y trabajos planificados para calendarios (iCalendar)',
  'feeds.name.alerts': 'Alertas (CAP)',

  'feeds.api.description':
    'Archivos que se hacen de nuevo en cada comprobación. Compare relyUntil con el reloj antes de cualquier uso: después, no confíe en nada de ellos. Que un hidrante no figure no significa que conste en servicio.',

  'feeds.list.text':
    'Los mismos datos en direcciones fijas, con las mismas horas. Cada uno dice cuándo se comprobó y después de cuándo no confiar en él.',

  'problem.cap-sender':
    'No use espacios, comas, el signo menor que ni el de «y» (et); suele ser un dominio, como water.millrace.example.',
};

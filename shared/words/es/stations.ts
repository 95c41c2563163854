import type { stations as english } from '../en/stations.ts';

/** Palabras en español: áreas de estaciones en las páginas públicas. */
export const stations: Record<keyof typeof english, string> = {
  'stations.nav': 'Por estación',
  'stations.title': 'Áreas de estaciones',
  'stations.lead':
    'Dónde cada estación de bomberos es la primera en acudir. Cada área tiene una página que se imprime en una hoja.',
  'stations.back': 'Todas las áreas de estaciones',
  'stations.page-title': '{name}: hidrantes fuera de servicio',
  'stations.headline':
    '{out, plural, =0 {Ningún hidrante de {total} está fuera de servicio} one {1 hidrante de {total} está fuera de servicio} other {{count} hidrantes de {total} están fuera de servicio}}',
  'stations.headline.none': 'Ningún hidrante del inventario está en esta área',
  'stations.others':
    '{count, plural, one {Un aviso más nombra un hidrante o un lugar de esta área que el inventario no tiene; también está en la lista.} other {# avisos más nombran hidrantes o lugares de esta área que el inventario no tiene; también están en la lista.}}',
  'stations.unplaced':
    '{count, plural, one {Un aviso no tiene lugar y puede estar aquí. Está en la lista de todos.} other {# avisos no tienen lugar y pueden estar aquí. Están en la lista de todos.}}',
  'stations.in-service': 'En servicio, por clase',
  'stations.class': 'Clase',
  'stations.count': 'Hidrantes',
  'stations.no-class': 'Sin clase registrada',
  'stations.list': 'Fuera de servicio',
  'stations.list.none':
    'Todos los hidrantes de esta área están en servicio, hasta donde se sabe en la comprobación.',
  'stations.hydrant': 'Hidrante',
  'stations.since': 'Fuera desde, causa, vuelta prevista',
  'stations.instead': 'Usar en su lugar',
  'stations.expected': 'vuelve {when}',
  'stations.not-expected': 'aún sin hora prevista',
  'stations.by.streets': 'Las distancias son por las calles.',
  'stations.by.straight': 'Las distancias son en línea recta. La manguera por las calles es más larga.',
  'stations.straight': 'línea recta',
  'stations.rest':
    '{count, plural, one {Uno más, que no está en esta hoja:} other {# más, que no están en esta hoja:}}',
  'stations.unnamed': '{count, plural, one {y uno más} other {y # más}} en la página misma',
  'stations.map': 'Mapa del área de {name}',
  'stations.map.alt':
    '{out, plural, =0 {Ninguno está fuera de servicio.} one {Uno está fuera de servicio, con un número.} other {# están fuera de servicio, con números.}} La lista dice cada lugar con palabras.',
  'stations.map.outline': 'Límite del área',
  'stations.row':
    '{out, plural, =0 {ninguno fuera de servicio} one {1 fuera de servicio} other {{count} fuera de servicio}}, de {total}',
};

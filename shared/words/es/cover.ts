import type { cover as english } from '../en/cover.ts';

export const cover: Record<keyof typeof english, string> = {
  'cover.summary': 'De un vistazo',
  'cover.oldest': 'Más tiempo fuera',
  'cover.oldest.none': 'No consta nada fuera de servicio.',
  'cover.returns': 'Tiempo hasta volver',
  'cover.returns.median':
    '{count, plural, one {{length}, por el único que volvió en los {days} días anteriores a esta comprobación.} other {{length}: de los {shown} que volvieron en los {days} días anteriores a esta comprobación, la mitad tardó menos y la mitad tardó más.}}',
  'cover.returns.none':
    'Ninguno ha vuelto aún en los {days} días anteriores a esta comprobación, así que no hay un tiempo habitual que indicar.',
  'cover.inactive':
    '{count, plural, one {Otro hidrante consta como no utilizado en el inventario. No se cuenta aquí y nunca se ofrece.} other {Otros {shown} hidrantes constan como no utilizados en el inventario. No se cuentan aquí y nunca se ofrecen.}}',

  'cover.lost': 'Cobertura perdida',
  'cover.lost.count':
    '{count, plural, one {1 zona perdió su cobertura} other {{shown} zonas perdieron su cobertura}}',
  'cover.lost.no-area': 'No se halló ninguna zona que haya perdido su cobertura',
  'cover.not-counted':
    '{count, plural, one {# reporte de un hidrante que no está en el inventario queda fuera de esto: no se sabe qué cobertura quitó.} other {# reportes de hidrantes que no están en el inventario quedan fuera de esto: no se sabe qué cobertura quitaron.}}',

  'cover.here': 'Hidrantes en servicio alrededor',
  'cover.within': 'A menos de',
  'cover.now': 'Ahora',
  'cover.before': 'Antes',
  'cover.credit': 'Crédito por distancia: {left} ahora, {before} antes.',
  'cover.credit.at-most': 'como máximo {flow}',

  'cover.hose.perhaps':
    '{all, select, true {{hose} de manguera quizá alcancen desde cada uno de estos.} other {{hose} de manguera quizá alcancen desde {count, plural, one {uno de estos} other {# de estos}}.}}',
  'cover.hose.reaches':
    '{all, select, true {{hose} de manguera alcanzan desde cada uno de estos.} other {{hose} de manguera alcanzan desde {count, plural, one {uno de estos} other {# de estos}}.}}',
  'cover.hose.none': '{hose} de manguera no alcanzan desde ninguno de estos.',
  'cover.hose.too-far': 'más lejos que {hose} de manguera',
  'cover.straight-only': 'línea recta, sin calle conocida',

  'cover.sure': 'Qué tan seguro es esto',
  'cover.by.straight':
    'Las distancias son en línea recta. La manguera por las calles es más larga, así que el crédito es como máximo este.',
  'cover.by.streets': 'Las distancias son por las calles.',
  'cover.doubt.flow':
    '{count, plural, one {1 hidrante en servicio a menos de {reach} no tiene caudal registrado.} other {# hidrantes en servicio a menos de {reach} no tienen caudal registrado.}}',
  'cover.doubt.outlets':
    '{count, plural, one {De 1 hidrante en servicio no constan las bocas.} other {De # hidrantes en servicio no constan las bocas.}}',
  'cover.doubt.not-retested':
    '{count, plural, one {1 hidrante en servicio a menos de {reach} volvió sin repetir sus pruebas.} other {# hidrantes en servicio a menos de {reach} volvieron sin repetir sus pruebas.}}',
  'cover.doubt.maybe-struck':
    '{count, plural, one {1 hidrante contado aquí puede ser el propio golpeado.} other {# hidrantes contados aquí pueden ser el propio golpeado.}}',
  'cover.doubt.class-only': 'Los caudales no se publican: cada hidrante cuenta como el máximo de su clase.',
  'cover.doubt.none': 'Constan el caudal y las bocas de cada hidrante.',

  'cover.title': 'Zonas que perdieron cobertura',
  'cover.what':
    'Lugares que tenían un hidrante en servicio a menos de {reach} o un crédito de {need}, y no lo tienen mientras los hidrantes de la lista estén fuera.',
  'cover.what.no-need':
    'Lugares que tenían un hidrante en servicio a menos de {reach}, y no lo tienen mientras los hidrantes de la lista estén fuera.',
  'cover.looked.grid':
    '{points, plural, =0 {No se miró ningún punto, porque ningún hidrante del inventario está fuera.} one {Se miró un punto: de una cuadrícula de {step}, el único a menos de {reach} de lo que está fuera.} other {Se miraron {shown} puntos: una cuadrícula de {step}, dondequiera que haya un hidrante fuera de servicio a menos de {reach}.}}',
  'cover.looked.places':
    '{points, plural, =0 {Ningún lugar que deba tener cobertura está a menos de {reach} de lo que está fuera.} one {Se miró el único lugar que debe tener cobertura a menos de {reach} de lo que está fuera.} other {Se miraron los {shown} lugares que deben tener cobertura a menos de {reach} de lo que está fuera.}}',
  'cover.found.none': 'En esta comprobación, ninguno de ellos había perdido su cobertura.',
  'cover.found':
    '{lost, plural, one {Uno de ellos perdió su cobertura} other {{lostShown} de ellos perdieron su cobertura}}{none, plural, =0 {; todos tienen aún un hidrante en servicio a menos de {reach}.} one {; en uno todos los hidrantes a menos de {reach} están fuera.} other {; en {noneShown} todos los hidrantes a menos de {reach} están fuera.}}',
  'cover.straight-note':
    'En línea recta, que llega más lejos que la manguera: lo que se nombra aquí perdió su cobertura, y puede haber más lugares.',
  'cover.area.around': 'Alrededor de {name}',
  'cover.area.none': 'Todos los hidrantes a menos de {reach} están fuera.',
  'cover.area.none-part':
    '{none, plural, one {En 1 de {points} puntos} other {En {none} de {points} puntos}} todos los hidrantes a menos de {reach} están fuera; los demás tienen menos de {need}.',
  'cover.area.short': 'Crédito por debajo de {need}: quedan {left} donde es peor; antes, {before}.',
  'cover.area.size.grid':
    '{points, plural, one {1 punto de la cuadrícula} other {# puntos de la cuadrícula}}, unos {ground}',
  'cover.acres': '{value} acres',
  'cover.hectares': '{value} ha',
  'cover.area.name': '{place} ({hydrant})',
  'cover.area.size.places': '{points, plural, one {1 lugar} other {# lugares}}',
  'cover.area.because':
    '{count, plural, one {Porque este hidrante está fuera: {hydrants}.} other {Porque estos hidrantes están fuera: {hydrants}.}}',
  'cover.area.because-more': 'Porque {count} hidrantes están fuera, entre ellos {hydrants}.',
  'cover.area.more':
    '{count, plural, one {Una zona más es menor que las de la lista.} other {# zonas más son menores que las de la lista.}}',
  'cover.area.all': 'Todas las zonas, dibujadas',
  'cover.area.map': 'Dónde se perdió la cobertura: alrededor de {name}',
  'cover.area.map.alt':
    'Cuadros llenos: todos los hidrantes a menos de {reach} están fuera. Cuadros rayados: crédito por debajo de lo necesario. Señales numeradas: hidrantes fuera de servicio, como en la lista. Círculos: hidrantes en servicio. El norte está arriba.',
  'cover.legend.none': 'ningún hidrante a menos de {reach}',
  'cover.legend.short': 'crédito por debajo de {need}',
  'cover.legend.in': 'en servicio',
  'cover.legend.out': 'fuera de servicio, con el número de la lista',
  'cover.not-drawn':
    'Las zonas no se dibujan, porque esta empresa publica los lugares de los hidrantes solo de forma aproximada.',

  'cover.help.streets':
    'Las distancias son por las calles que están cargadas. No se tienen en cuenta cercas, vías ni calles cerradas.',
  'cover.rule': 'Cómo se cuenta la cobertura',
  'cover.rule.credit':
    'A cada hidrante en servicio se le acredita según su distancia: hasta {first} a menos de {firstTo}, hasta {second} a menos de {secondTo}, hasta {third} a menos de {thirdTo}, nada más allá. Nunca se le acredita más que su último caudal nominal, ni más de lo que permiten sus bocas. Es la regla publicada con la que se califica a las ciudades para el seguro contra incendios (distribución de hidrantes del Fire Suppression Rating Schedule de ISO).',
  'cover.rule.at-most':
    '«Como máximo» precede a un crédito que podría ser menor: porque las distancias son en línea recta, o porque no constan un caudal o las bocas.',
  'cover.rule.hose':
    'Se supone que un camión lleva {hose} de manguera. En línea recta, la manguera «quizá alcance», nunca «alcanza».',
  'cover.rule.not':
    'El crédito no es una promesa de agua: lo que dan varios hidrantes juntos depende de las tuberías que tienen detrás.',
  'cover.back': 'Todos los hidrantes fuera de servicio',
  'cover.no-inventory':
    'No se ha cargado ninguna lista de hidrantes, así que no se puede decir nada de la cobertura.',
};

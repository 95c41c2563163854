import type { offline as en } from '../en/offline.ts';

/** Palabras en español: lo que la aplicación de la cuadrilla dice de este dispositivo. */
export const offline: Record<keyof typeof en, string> = {
  'offline.newer': 'Hay una versión más nueva de esta aplicación.',
  'offline.newer-more': 'Lo que escribió se conserva.',
  'offline.newer-take': 'Abrirla ahora',

  'offline.title': 'Este dispositivo',
  'offline.app': 'Sin señal',
  'offline.app.ready': 'La aplicación se abre.',
  'offline.app.preparing':
    'La aplicación se está guardando en este dispositivo. Déjela abierta hasta que cambie esta línea.',
  'offline.app.none':
    'La aplicación no se abre: este navegador no puede guardarla o la dirección no tiene HTTPS. Lo que está abierto sigue funcionando.',
  'offline.nearby': 'Hidrantes',
  'offline.nearby.known':
    '{more, select, yes {Los {count} más cercanos} other {Los {count}}} a menos de {distance} de su último lugar, según la lista de {when}.',
  'offline.nearby.none': 'Todavía ninguno en este dispositivo.',
  'offline.nearby.here': 'Guardar los hidrantes de esta zona',
  'offline.nearby.denied':
    'Este dispositivo no comparte su posición. Abra un hidrante una vez: los de alrededor le siguen.',
  'offline.lists': 'Modelos, juegos y códigos',
  'offline.lists.here': 'En este dispositivo.',
  'offline.lists.none':
    'Aún no están en este dispositivo: un formulario de reparación no ofrecería juego ni par de apriete.',
  'offline.keeping': 'Lo que espera aquí',
  'offline.keeping.kept': 'El navegador ha prometido conservarlo.',
  'offline.keeping.refused':
    'El navegador no ha prometido conservarlo: puede borrarlo cuando falte espacio en el dispositivo. Envíelo en cuanto haya señal. Ayuda añadir la aplicación a la pantalla de inicio.',
  'offline.keeping.unknown': 'No se ha pedido al navegador que lo conserve.',
  'offline.keeping.ask': 'Pedirle que lo conserve',
  'offline.room': 'Espacio libre',
  'offline.room.low': '{size}. Puede que las fotos no quepan: libere espacio en el dispositivo.',
  'offline.short.ready':
    'Listo sin señal: {count, plural, =0 {todavía ningún hidrante} one {# hidrante} other {# hidrantes}} en este dispositivo.',
  'offline.short.not': 'Todavía no está listo para quedarse sin señal.',

  'offline.local-strike': 'Todavía no enviado. Esto es lo que sabe este dispositivo.',
  'offline.waiting-here': 'Espera en este dispositivo',
  'offline.go-on': 'Seguir con este choque',
  'offline.unsent-out':
    'Un informe en este dispositivo deja este hidrante fuera de servicio. No está enviado.',
  'offline.partial': 'De la lista de este dispositivo, de {when}. No se sabe si ahora está en servicio.',
  'finder.on-device':
    'El servidor no responde. {count, plural, =0 {Ninguno encontrado} one {# hidrante encontrado} other {# hidrantes encontrados}} en este dispositivo, según la lista de {when}.',
  'outbox.delivered': 'Escrito por {author}, entregado por {by}.',
  'outbox.error.device-full': 'No queda espacio en este dispositivo.',
  'problem.within-not-a-number': 'Indique "within" como un número entero de pies, de 1 a {maximum}.',
};

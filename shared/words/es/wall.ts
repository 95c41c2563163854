import type { wall as english } from '../en/wall.ts';

export const wall: Record<keyof typeof english, string> = {
  'wall.title': 'Hidrantes fuera de servicio: pantalla de pared',
  'wall.link': 'Pantalla de pared para una sala de guardia',
  'wall.back': 'Página para leer',
  'wall.out-of':
    '{out, plural, one {de {total} hidrantes está fuera de servicio} other {de {total} hidrantes están fuera de servicio}}',
  'wall.beyond':
    '{count, plural, one {Se reportó # más que no está en el inventario} other {Se reportaron # más que no están en el inventario}}',
  'wall.behind':
    '{count, plural, one {Un aviso recibido desde el {since} aún no está en esta pantalla. Puede haber un hidrante fuera de servicio que ella no nombra: llame al {phone}.} other {# avisos recibidos desde el {since} aún no están en esta pantalla. Puede haber hidrantes fuera de servicio que ella no nombra: llame al {phone}.}}',
  'wall.none': 'En esta comprobación, ningún hidrante del inventario constaba como fuera de servicio.',
  'wall.not-set-up': 'Sin configurar: no se ha cargado ninguna lista de hidrantes.',
  'wall.oldest': 'El que lleva más tiempo fuera',
  'wall.median': 'La mitad de los del último año volvió en menos de {length}',
  'wall.in-service': 'Use en su lugar',
  'wall.checked': 'Comprobado',
  'wall.rely': 'No confíe después de',
  'wall.now': 'Ahora, según el reloj de esta pantalla',
  'wall.call': 'Llame al',
  'wall.list': 'Fuera de servicio ahora, los más recientes primero',
  'wall.new': 'NUEVO',
  'wall.page': '{page} de {pages}',
  'wall.hold': 'Quedarse en esta parte',
  'wall.go-on': 'Seguir pasando',
  'wall.next': 'Parte siguiente',
  'wall.more':
    '{count, plural, one {Hay # más fuera, desde antes que estos. Está en la lista.} other {Hay # más fuera, desde antes que estos. Están en la lista.}}',

  'wall.old.title': 'NO CONFÍE EN ESTA PANTALLA',
  'wall.old.why': 'Era válida hasta: {until}. Lo que muestra se comprobó {checked} y puede haber cambiado.',
  'wall.old.alive':
    'El servicio responde, pero su página no se ha rehecho desde: {checked}. Avise al servicio de agua.',
  'wall.old.gone': 'No se puede contactar con el servicio desde: {since}. Revise la red de esta pantalla.',
  'wall.early.why':
    'El reloj de esta pantalla va por detrás de la comprobación ({checked}), así que no puede saber si lo que muestra aún es válido. Ponga el reloj en hora.',
  'wall.gone.title': 'No se puede contactar con el servicio',
  'wall.gone.why':
    'Sin respuesta desde: {since}. Lo que se muestra se comprobó {checked} y es válido hasta: {until}.',
  'wall.stopped.title': 'ESTA PANTALLA HA DEJADO DE RENOVARSE',
  'wall.stopped.why':
    'Lleva más de cinco minutos con la misma página. No confíe en ella. Vuelva a cargar la página; si no ayuda, llame al {phone}.',
  'wall.again': 'Volver a cargar',
  'wall.mark': 'NO CONFÍE',
  'wall.mark-gone': 'SIN RESPUESTA',
  'wall.announce': '{count, plural, one {Nuevo en la lista: {names}} other {Nuevos en la lista: {names}}}',
};

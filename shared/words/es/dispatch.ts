import type { dispatch as english } from '../en/dispatch.ts';

/** Spanish words: messages to fire dispatch, and how they stand on the screens. */
export const dispatch: Record<keyof typeof english, string> = {
  'dispatch.text.out': 'HIDRANTE FUERA DE SERVICIO: {where}.',
  'dispatch.text.back': 'HIDRANTE DE NUEVO EN SERVICIO: {where}.',
  'dispatch.text.corrected':
    'CORRECCIÓN: el hidrante {where} NO está fuera de servicio. Se reportó por error.',
  'dispatch.text.since': '{cause}, {when}.',
  'dispatch.text.back-since': 'Desde {when}.',
  'dispatch.text.nearest': 'Más cercanos en servicio, en línea recta: {list}.',
  'dispatch.text.not-shown': 'Sin volver a probar: {proofs}.',
  'dispatch.text.end': 'Ref {reference}. Llame al {callBack}.',
  'dispatch.replaces': 'Reemplaza el aviso del hidrante {hydrantId}, ref {reference}.',
  'dispatch.out-instead':
    'El que está fuera de servicio: {hydrantId}{reference, select, none {} other {, ref {reference}}}.',
  'dispatch.no-number': 'aún sin número',
  'dispatch.no-place': 'lugar desconocido: llame',
  'dispatch.maybe': 'Puede ser {list}.',
  'dispatch.class': 'clase {className}',
  'dispatch.cause.none': 'Fuera de servicio',
  'dispatch.cause.other': 'Otra causa',
  'dispatch.not-rated': 'sin clasificar',
  'dispatch.tested': 'probado el {on}',
  'dispatch.private': 'privado',

  'dispatch.email.subject.out': 'Hidrante fuera de servicio: {name}, {place} (ref {reference})',
  'dispatch.email.subject.back': 'Hidrante de nuevo en servicio: {name}, {place} (ref {reference})',
  'dispatch.email.subject.corrected':
    'Corrección: el hidrante {name}, {place} no está fuera de servicio (ref {reference})',
  'dispatch.email.lead.out':
    'HIDRANTE FUERA DE SERVICIO. No cuente con {known, select, yes {{name}, {place}} other {el hidrante en {place}}}.',
  'dispatch.email.lead.back': 'HIDRANTE DE NUEVO EN SERVICIO: {name}, {place}.',
  'dispatch.email.lead.corrected':
    'CORRECCIÓN. El hidrante {name}, {place}, NO está fuera de servicio. Se reportó por error.',
  'dispatch.email.line': '{what}: {value}',
  'dispatch.email.hydrant': 'Hidrante',
  'dispatch.email.place': 'Lugar',
  'dispatch.email.position': 'Posición (WGS 84)',
  'dispatch.email.cause': 'Causa',
  'dispatch.email.since': 'Desde',
  'dispatch.email.expected': 'Regreso previsto',
  'dispatch.email.not-known': 'aún no se sabe',
  'dispatch.email.back-since': 'En servicio desde',
  'dispatch.email.nearest': 'Hidrantes en servicio más cercanos:',
  'dispatch.email.no-nearest': 'No se conoce ningún hidrante en servicio cerca.',
  'dispatch.email.straight-line':
    'Las distancias son en línea recta sobre el terreno; la manguera recorre más. Los caudales son los registrados, con fecha cuando vienen de una prueba.',
  'dispatch.email.reference': 'Referencia: {reference}',
  'dispatch.email.call':
    'Llame a {utilityName} al {callBack} y diga que lo recibió. Mientras nadie lo haga, la cuadrilla le llamará.',
  'dispatch.email.page': 'Todos los hidrantes fuera de servicio: {address}',
  'dispatch.email.footer':
    'Hecho por los registros del servicio de agua a las {made}. Nadie lee respuestas a esta dirección.',

  'dispatch.title': 'Avisos a la central',
  'dispatch.off':
    'Este servicio de agua no envía avisos a la central por sí mismo. Avise a la central por radio o teléfono.',
  'dispatch.none': 'No se ha enviado ningún aviso de esto a la central. Avise por radio o teléfono.',
  'dispatch.what.out': 'Fuera de servicio: {what}',
  'dispatch.what.back': 'De nuevo en servicio: {what}',
  'dispatch.what.corrected': 'Corrección, no está fuera de servicio: {what}',
  'dispatch.reference': 'Referencia {reference}',
  'dispatch.says': 'Lo que dice el mensaje de texto',
  'dispatch.state.waiting':
    '{label}, por {by, select, email {correo} other {mensaje de texto}}: a punto de enviarse',
  'dispatch.state.claimed': '{label}, por {by, select, email {correo} other {mensaje de texto}}: enviándose',
  'dispatch.state.sent': '{label}, por {by, select, email {correo} other {mensaje de texto}}: enviado {when}',
  'dispatch.state.failed':
    '{label}, por {by, select, email {correo} other {mensaje de texto}}: NO enviado, {tries, plural, one {un intento} other {# intentos}}; se intentará de nuevo pronto',
  'dispatch.state.dead':
    '{label}, por {by, select, email {correo} other {mensaje de texto}}: NO enviado, {tries, plural, one {un intento} other {# intentos}}; no se intentará más',
  'dispatch.state.overtaken':
    '{label}, por {by, select, email {correo} other {mensaje de texto}}: no enviado, porque un aviso posterior dice otra cosa',
  'dispatch.held.too-old':
    'No enviado: ocurrió más de {hours, plural, one {# hora} other {# horas}} antes de registrarse.',
  'dispatch.held.nothing-sent': 'No enviado: a la central no se le había enviado el aviso que corrige.',
  'dispatch.confirmed': 'Una persona avisó a la central el {when}.',
  'dispatch.unconfirmed': 'Nadie lo ha confirmado aún: llame a {name}.',
  'dispatch.unconfirmed.why':
    'Un aviso enviado puede no haberse leído todavía. Llame y registre quién lo recibió.',
  'dispatch.record': 'Registrar quién lo recibió',
  'dispatch.retry': 'Enviar de nuevo ahora',
  'dispatch.send-anyway': 'Enviarlo de todos modos',
  'dispatch.retrying': 'Sale en menos de un minuto.',
  'dispatch.earlier': '{count, plural, one {# aviso anterior} other {# avisos anteriores}}',
  'dispatch.failed.title': 'Avisos a la central que no salieron',
  'dispatch.failed.do': 'Llame a {name} por cada uno y registre quién lo recibió.',
  'problem.no-such-notice': 'No existe ese aviso a la central.',
  'problem.notice-overtaken':
    'Un aviso posterior sobre este hidrante dice otra cosa, así que este ya no se envía.',
  'problem.notice-past': 'Este aviso tiene más de {days} días. Avise a la central por teléfono.',
  'problem.notice-went': 'Este aviso ya salió para todos, o se está enviando ahora.',
  'problem.messages-off': 'No hay avisos a la central configurados, o están apagados.',
  'problem.recipient-id': 'Use minúsculas, cifras y guiones, primero una letra o cifra, no más de 40.',
  'problem.phone-e164': 'Indique el número con su país y sin espacios, como +12025550101.',
  'problem.recipient-twice': 'Dos destinatarios tienen el mismo identificador. Dé a cada uno el suyo.',
};

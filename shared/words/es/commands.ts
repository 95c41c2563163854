import type { commands as english } from '../en/commands.ts';

export const commands: Record<keyof typeof english, string> = {
  'refused.not-json.title': 'Esto no es JSON',
  'refused.not-json.detail': 'No se guardó nada. Envíe un valor JSON en UTF-8.',
  'refused.not-signed-in.title': 'Inicie sesión primero',
  'refused.not-signed-in.detail': 'No se guardó nada. Inicie sesión y vuelva a enviarlo.',
  'refused.not-allowed.title': 'Su función no permite esto',
  'refused.not-allowed.detail':
    'No se guardó nada. Pídalo a quien tenga la función adecuada o a su responsable.',
  'refused.not-found.title': 'No se encuentra',
  'refused.not-found.detail': 'No hay nada en esta dirección.',
  'refused.clash.title': 'Este identificador ya se usó para otra cosa',
  'refused.clash.detail':
    'Hay un registro guardado con este identificador que dice otra cosa en «{field}». El guardado se mantiene. Para cambiarlo, envíe una corrección.',
  'refused.already-corrected.title': 'Esto ya se corrigió',
  'refused.already-corrected.detail':
    'El registro {by} ya lo corrige. Corrija ese, después de leer lo que dice.',
  'refused.taken.title': 'Este número está ocupado',
  'refused.taken.detail': 'No se guardó nada. Elija otro número.',
  'refused.too-large.title': 'Esto es demasiado grande',
  'refused.too-large.detail': 'No se guardó nada. Las fotos se envían aparte del formulario que las declara.',
  'refused.invalid.title': 'Hay campos que revisar',
  'refused.invalid.detail': 'No se guardó nada. Corríjalos y vuelva a enviarlo.',
  'refused.unavailable.title': 'El almacén no respondió',
  'refused.unavailable.detail':
    'Inténtelo de nuevo en un momento, con el mismo identificador. No se pierde nada de lo enviado antes.',
  'refused.fault.title': 'Algo falló de nuestro lado',
  'refused.fault.detail':
    'Inténtelo de nuevo con el mismo identificador. Si se repite, comunique la referencia {reference}.',
  'problem.body-too-large': 'Envíe como máximo {maximumKb} kB.',
  'problem.body-missing': 'La petición no trae contenido. Envíe JSON.',
  'problem.not-json': 'No se pudo leer como JSON en UTF-8.',
  'problem.nested-too-deep': 'Tiene más de {maximum} niveles de anidamiento.',
  'problem.text-not-unicode': 'Este texto contiene medio carácter. Escríbalo de nuevo.',
  'problem.number-out-of-reach':
    'Este número es demasiado grande, o está demasiado cerca de cero, para guardarlo.',
  'problem.token-missing': 'Envíe la credencial de sesión como «Authorization: Bearer …».',
  'problem.token-expired': 'Esta sesión ha caducado. Inicie sesión de nuevo.',
  'problem.token-not-valid': 'Esta credencial de sesión no vale aquí. Inicie sesión de nuevo.',
  'problem.role-may-not': 'Se necesita una de estas funciones: {roles}.',
  'problem.role-may-not-write': 'Un registro de tipo «{kind}» lo escribe: {roles}.',
  'problem.server-writes-this': '«{kind}» lo escribe el propio servidor; no se puede enviar ni corregir.',
  'problem.test-needs-manager': 'Solo un responsable puede marcar un registro como prueba.',
  'problem.no-such-route': 'Esta dirección no existe. Revise cómo está escrita y el método.',
  'problem.try-again': 'Envíe lo mismo de nuevo en un momento.',
  'problem.our-fault': 'No es un error suyo. Referencia: {reference}.',
  'problem.id-reused':
    'Un registro con este identificador se guardó el {recordedAt} con otra cosa aquí. Un contenido nuevo necesita un identificador nuevo.',
  'problem.already-corrected': 'El registro {by} ya corrige este.',
  'problem.claim-number-taken': 'El número de reclamación {claimNumber} pertenece a otra reclamación.',
  'problem.item-too-large':
    'Este registro ocupa {kilobytes} kB y el máximo es {maximumKb} kB. Divídalo en dos.',
  'problem.no-such-submission':
    'El registro {submissionId} no está guardado (todavía) en este asunto. Envíelo primero.',
  'problem.exhibit-not-declared': 'El registro {submissionId} no declara ninguna foto con este SHA-256.',
  'problem.no-such-exhibit': 'No existe ese documento.',
  'problem.exhibit-awaited': 'Esta foto se declaró, pero su contenido aún no ha llegado.',
};

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
  'refused.too-many.title': 'Esto es más de lo que una persona puede enviar hoy',
  'refused.too-many.detail':
    'No se pierde nada: lo que espera en el dispositivo sigue ahí y se puede enviar más tarde.',
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
  'problem.unseen-signs':
    'Contiene un signo que no se ve, como los que cambian la dirección de la escritura. Escriba el número tal como está pintado.',
  'problem.claim-number-taken': 'El número de reclamación {claimNumber} pertenece a otra reclamación.',
  'problem.item-too-large':
    'Este registro ocupa {kilobytes} kB y el máximo es {maximumKb} kB. Divídalo en dos.',
  'problem.no-such-submission':
    'El registro {submissionId} no está guardado (todavía) en este asunto. Envíelo primero.',
  'problem.exhibit-not-declared': 'El registro {submissionId} no declara ninguna foto con este SHA-256.',
  'problem.no-such-exhibit': 'No existe ese documento.',
  'problem.exhibit-awaited': 'Esta foto se declaró, pero su contenido aún no ha llegado.',
  'role.crew': 'Cuadrilla',
  'role.clerk': 'Gestión de reclamaciones',
  'role.manager': 'Responsable',
  'command.sign-in-title': 'Iniciar sesión para desarrollo',
  'command.folder-unwritable':
    'No se puede escribir en la carpeta {folder}. Elija otra con DATA_DIR o cambie sus permisos.',
  'command.folder-in-use':
    'La carpeta {folder} la usa el servidor de {origin}. Deténgalo primero (Ctrl-C en su terminal).',
  'command.folder-locked': 'La carpeta {folder} la usa otro proceso. Deténgalo primero.',
  'command.folder-not-ours':
    'La carpeta {folder} contiene archivos que no son de este programa. No se cambió nada; elija otra con DATA_DIR.',
  'command.port-taken': 'El puerto {port} lo usa otro programa. Elija otro: PORT=4781 npm start',
  'command.port-wrong': 'PORT debe ser un número entero de 1 a 65535, y es «{port}».',
  'command.host-wrong':
    'HOST es «{host}», que no es una dirección de esta máquina. Use 127.0.0.1, o 0.0.0.0 para toda la red.',
  'command.settings-not-json':
    'UTILITY_SETTINGS debe ser la configuración misma como JSON, no el nombre de un archivo: UTILITY_SETTINGS="$(cat ARCHIVO)" npm start',
  'command.settings-wrong': 'UTILITY_SETTINGS no sirve: {reason}.',
  'command.building-site': 'Construyendo el sitio (una vez y tras cada cambio) …',
  'command.build-failed': 'No se pudo construir el sitio:\n{output}',
  'command.site-built': 'El sitio está construido: {folder}',
  'command.site-current': 'El sitio ya está construido con estas fuentes: {folder}',
  'command.loading-demo': 'Cargando el servicio de agua de demostración …',
  'command.replaying': 'El último servidor no se cerró: se completa lo que dejó sin hacer …',
  'command.start-help':
    'npm start pone todo en marcha en esta máquina. No tiene opciones; lo cambian estas variables:',
  'command.start-help.PORT': 'el puerto; sin ella, 4780',
  'command.start-help.HOST':
    'la dirección en la que escucha; sin ella, 127.0.0.1, a la que solo llega esta máquina',
  'command.start-help.DATA_DIR': 'la carpeta de sus datos; sin ella, .data',
  'command.start-help.UTILITY_SETTINGS':
    'su propia empresa como JSON, en lugar de la inventada con su demostración',
  'command.start-help.example': 'por ejemplo',
  'command.no-such-option': 'No existe la opción {option}. npm start -- --help dice qué se puede cambiar.',
  'command.not-published':
    'No se pudieron hacer las páginas públicas: quedan las que hay, y se intenta de nuevo. El motivo está en {log}.',
  'command.ready': 'Listo en {seconds} s. Ctrl-C lo detiene; los datos quedan en {folder}.',
  'command.line-public': 'Página pública',
  'command.line-crew': 'Formularios de cuadrilla',
  'command.line-desk': 'Mesa de reclamaciones',
  'command.line-sign-in': 'Entrar como {role, select, crew {cuadrilla} clerk {gestión} other {responsable}}',
  'command.line-packet': 'Expediente de demostración',
  'command.stopping': 'Deteniendo …',
  'command.reset-done': 'Se borró {folder}. El próximo npm start empieza de cero.',
  'command.reset-option':
    'npm run reset no tiene opciones, y con una ({option}) no borra nada. Borra la carpeta de datos: .data, o la de DATA_DIR.',
  'command.reset-nothing': 'No existe {folder}; no hay nada que borrar.',
  'problem.no-such-strike': 'No hay ningún choque con este identificador.',
  'problem.no-such-hydrant': 'No hay ningún hidrante con este número en el inventario.',
  'problem.no-such-claim': 'No hay ninguna reclamación con este identificador.',
  'problem.near-not-a-place': 'Indique «near» como latitud,longitud en grados decimales, como 36.85,-76.29.',
  'problem.limit-not-a-number': 'Indique «limit» como número entero de 1 a {maximum}.',
  'problem.find-or-near':
    'Diga qué buscar: «find» con parte de un número o lugar, o «near» con una posición.',
  'command.rebuild-computed':
    'Calculado de nuevo: {items, plural, one {# elemento} other {# elementos}} a partir de {facts, plural, one {# hecho} other {# hechos}}.',
  'command.rebuild-same': 'Todo lo guardado para leer es lo que dicen los hechos.',
  'command.rebuild-difference':
    '{kind, select, missing {falta} extra {sobra} other {difiere}}: {partition} {key}{path, select, none {} other { en {path}}}',
  'command.rebuild-differs':
    '{count, plural, one {Difiere # elemento} other {Difieren # elementos}}. Para corregirlo: npm run rebuild -- --write',
  'command.rebuild-repaired':
    '{count, plural, one {Se corrigió # elemento} other {Se corrigieron # elementos}}; ahora todo lo guardado para leer es lo que dicen los hechos.',
  'command.rebuild-left':
    'Después de corregir {count, plural, one {aún difiere # elemento} other {aún difieren # elementos}}: llegaron hechos entretanto, o es un fallo nuestro. Ejecútelo otra vez.',
  'command.rebuild-option': 'No hay opción {option}. Hay una: --write, que corrige.',
  'command.tables-variable':
    'Para trabajar en las tablas de un despliegue defina también {name}, como la tienen sus funciones.',
  'problem.correction-of-another':
    'Lo que esto corrige no es "{targetKind}". Use el formulario de lo que corrige.',
  'problem.correction-of-other-kind':
    'Lo que corrige es «{kind}», no «{targetKind}». Use el formulario de lo que corrige.',
};

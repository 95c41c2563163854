import type { backup as english } from '../en/backup.ts';

export const backup: Record<keyof typeof english, string> = {
  'backup.usage': 'Dé un archivo: npm run backup -- ARCHIVO. npm run backup -- --help dice más.',
  'backup.help':
    'npm run backup -- ARCHIVO\n\nEscribe cada hecho, sus datos personales, los números tomados y las cartas y mensajes en un archivo nuevo. Contiene nombres de personas: guárdelo como las tablas y bórrelo cuando pase su plazo. Las fotos y los expedientes quedan donde están; el archivo dice cuáles había.\n\nEn esta máquina detenga antes el servidor. Para un despliegue defina SUBMISSIONS_TABLE, PERSONAL_TABLE, PROJECTIONS_TABLE, UNIQUE_TABLE, OUTBOX_TABLE, UNPROJECTED_TABLE, INVENTORY_URL y EVIDENCE_URL como las nombran las salidas de su pila de datos, y AWS_REGION; puede seguir trabajando. DYNAMODB_ENDPOINT nombra otro servidor de las mismas tablas.',
  'backup.file-there': 'Ya hay un archivo {file}. No se escribió nada; elija otro nombre.',
  'backup.file-unwritable': 'El archivo {file} no se puede escribir ({reason}).',
  'backup.file-unreadable': 'El archivo {file} no se puede leer ({reason}).',
  'backup.not-one': 'El archivo {file} no es una copia de este programa. No se restauró nada.',
  'backup.newer':
    'La copia {file} es del formato {format}; esta versión lee hasta el {newest}. Use la versión que la escribió o una posterior. No se restauró nada.',
  'backup.cut-off': 'La copia {file} está cortada: falta su final. No se restauró nada; tome otra.',
  'backup.changed':
    'La copia {file} no está como se escribió: su cuenta o su SHA-256 no coincide. No se restauró nada; tome otra.',
  'backup.not-empty':
    'Ya hay algo en: {tables}. No se restauró nada. Restaure en tablas vacías; o, para añadir lo que falta a las que hay sin reemplazar nada, diga --add-missing.',
  'backup.written':
    'Se escribió {file}: {submissions, plural, one {# hecho} other {# hechos}}, {personal, plural, one {# fila} other {# filas}} de datos personales, {unique, plural, one {# número} other {# números}}, {outbox, plural, one {# fila} other {# filas}} de cartas y mensajes; {evidence, plural, one {# documento} other {# documentos}} en el almacén de pruebas, {awaited} en espera.',
  'backup.fingerprint':
    'Guardado para leer: {items, plural, one {# elemento} other {# elementos}}, SHA-256 {sha256}.',
  'restore.usage': 'Dé un archivo: npm run restore -- ARCHIVO. npm run restore -- --help dice más.',
  'restore.help':
    'npm run restore -- ARCHIVO [--add-missing]\n\nLee entera una copia, la pone en tablas vacías, vuelve a borrar lo que se borró desde entonces, calcula todo lo guardado para leer y mira que cada documento siga en el almacén de pruebas. Salida 0: todo está como se copió.\n\n--add-missing  también en tablas que contienen algo: añade lo que falta y no reemplaza nada\n\nLas tablas son las de npm run backup.',
  'restore.rows':
    'Copia de {takenAt}: {added, plural, one {# fila añadida} other {# filas añadidas}}, {same} que ya estaban, {other} que estaban con otro contenido y así quedan, {erased} omitidas por haberse borrado desde entonces.',
  'restore.other': 'Está con otro contenido: {table} {key}',
  'restore.erasures':
    '{count, plural, one {Se repitió # borrado} other {Se repitieron # borrados}} de datos personales.',
  'restore.same': 'Es lo que estaba guardado cuando se hizo la copia.',
  'restore.not-same':
    'No es lo que estaba guardado cuando se hizo la copia ({sha256}): rige otro inventario, se añadieron o borraron hechos desde entonces, o lo guardado no era correcto.',
  'restore.missing': 'Falta en el almacén de pruebas: {sha256}',
  'restore.evidence':
    'Pruebas: {there, plural, one {# documento está} other {# documentos están}}, {missing} faltan.',
  'erase.usage':
    'Dé un registro: npm run erase -- strike:ID, hydrant:ID o claim:ID. npm run erase -- --help dice más.',
  'erase.help':
    'npm run erase -- REGISTRO --ground MOTIVO --decided-by PERSONA [--reference TEXTO] [--only ID] [--write]\n\nDice qué datos personales contiene un registro, sin lo que dicen; con --write los borra para siempre y deja constancia de ello, de quién y por qué. REGISTRO es strike:ID, hydrant:ID o claim:ID.\n\n--ground      retention-ended, person-asked, court-ordered o wrong-person\n--decided-by  el identificador de quien lo decidió\n--reference   número de la solicitud, orden o regla; sin nombres\n--only        un solo envío del registro; puede darse varias veces\n\nLa retención legal de un reclamo lo prohíbe. Los expedientes emitidos, las cartas enviadas y las fotos no cambian. Las tablas son las de npm run backup.',
  'erase.ground': 'Diga por qué con --ground: uno de {grounds}.',
  'erase.who':
    'Diga quién lo decidió con --decided-by, por su identificador; una referencia no tiene más de 200 caracteres.',
  'erase.not-there': 'Nada personal se guarda en {stream} de: {ids}. No se borró nada.',
  'erase.would': '{submissionId}  {kind}: {paths}',
  'erase.nothing':
    'Nada personal se guarda en {stream}: no lo tiene, se borró antes, o no existe tal registro. No se borró nada.',
  'erase.on-hold':
    'No se borró nada: el reclamo {claims} está bajo retención legal. Quien pueda levantarla lo hace primero.',
  'erase.not-yet':
    'Todavía no se borró nada. Para borrar para siempre los datos personales de {count, plural, one {este envío} other {estos # envíos}}, diga --write.',
  'erase.done':
    'Se borraron los datos personales de {count, plural, one {# envío} other {# envíos}}, y quedó constancia.',
  'erasure-ground.retention-ended': 'Terminó el plazo de conservación',
  'erasure-ground.person-asked': 'La persona lo pidió',
  'erasure-ground.court-ordered': 'Lo ordenó un tribunal',
  'erasure-ground.wrong-person': 'Se registró a la persona equivocada',
};

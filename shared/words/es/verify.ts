import type { verify as english } from '../en/verify.ts';

export const verify: Record<keyof typeof english, string> = {
  'verify.title': 'Comprobar un expediente de reclamación',
  'verify.verdict.consistent': 'Coherente: nada en él se contradice. Esto no demuestra quién lo emitió.',
  'verify.verdict.issued':
    'Emitido por este servicio de agua: la firma es de este mismo archivo y nada en él se contradice.',
  'verify.verdict.issued-differs':
    'La firma es de este mismo archivo, pero el archivo se contradice. Pregunte al servicio de agua.',
  'verify.verdict.issued-archive':
    'El PDF es auténtico: la firma es de este mismo archivo y nada en él se contradice. El archivo de originales no es el que le corresponde.',
  'verify.verdict.archive':
    'Nada en el PDF se contradice; el archivo de originales no es el que le corresponde. Esto no muestra quién lo emitió.',
  'verify.verdict.differs': 'Se contradice en {count, plural, one {un lugar} other {# lugares}}.',
  'verify.verdict.not-issued': 'La firma no corresponde a este archivo. Nada en el archivo se contradice.',
  'verify.verdict.unreadable': 'No se pudo comprobar.',
  'verify.signature.none': 'No se dio ninguna firma, así que no se sabe quién emitió este archivo.',
  'verify.signature.no-keys':
    'Se dio una firma y ninguna clave con que comprobarla, así que no se sabe quién emitió este archivo.',
  'verify.signature.issued':
    'Firmado para la reclamación {claimNumber}, revisión {revision}, con la clave “{keyId}” de las claves dadas. Vale tanto como el lugar de donde vinieron esas claves.',
  'verify.archive.none':
    'No se dio el archivo de originales: no se miraron las fotos ni los documentos originales.',
  'verify.checked':
    '{utility}, reclamación {claimNumber}, {revision}. Estado de costos {total}, demanda {demand}. Comparado: {pages, plural, one {# página} other {# páginas}}, {lines, plural, one {# línea} other {# líneas}} del estado de costos, {pictures, plural, one {# imagen} other {# imágenes}}{archive, select, none {} other {, {archive} archivos originales}}.',
  'verify.revision': 'revisión {revision}',
  'verify.preview': 'una vista previa, no emitida',
  'verify.sha256': 'SHA-256 del archivo: {sha256}',

  'verify.finding.empty': 'El archivo está vacío.',
  'verify.finding.too-large': 'El archivo tiene {megabytes} MB; se leen {most} MB como máximo.',
  'verify.finding.not-a-pdf': 'Esto no es un PDF: no empieza como tal. Elija el archivo del expediente.',
  'verify.finding.cut-short':
    'El archivo está cortado: tras {bytes} bytes termina sin la marca final de un PDF. Pídalo de nuevo.',
  'verify.finding.encrypted':
    'El archivo está protegido con contraseña. Un expediente se envía sin ella; pida el archivo tal como se emitió.',
  'verify.finding.broken': 'El archivo está dañado y no se pudo leer: {reason}',
  'verify.finding.no-data':
    'El archivo no tiene el adjunto {name}, del que se recalcula un expediente. No es un expediente, es uno más antiguo, o lo imprimió o guardó otro programa.',
  'verify.finding.appended':
    'El archivo se cambió después de escribirse: {bytes} bytes siguen a su primer final, en el byte {at}.',
  'verify.finding.bytes-after-end':
    '{bytes} bytes que no pertenecen a nada siguen al final del archivo, en el byte {at}.',
  'verify.finding.pages-disagree': 'Dos lectores cuentan sus páginas de manera distinta: {one} y {other}.',

  'verify.finding.attachment-twice':
    '{times} adjuntos llevan el nombre {name}. Cuál ve un lector es azar; aquí se leyó el primero.',
  'verify.finding.attachment-missing': 'Falta el adjunto {name}.',
  'verify.finding.attachment-added': 'Se añadió un adjunto que no es del expediente: {name}, {bytes} bytes.',
  'verify.finding.attachment-differs':
    'El adjunto {name} no dice lo que da packet.json{at, select, none {.} other {: en {at} dice “{file}” y packet.json da “{own}”.}}',
  'verify.finding.data-not-json': 'El adjunto {name} no es JSON.',
  'verify.finding.data-not-plain':
    'El adjunto {name} no está escrito como lo escribe un expediente; un campo puede estar dos veces.',
  'verify.finding.unknown-field': '{path}: ningún expediente tiene este campo.',
  'verify.finding.not-valid': '{path}: {why}',
  'verify.finding.not-computable':
    'El trabajo y las tarifas del archivo no dan ningún estado de costos: {reason}',

  'verify.finding.line-amount':
    'Línea {lineId}: el archivo dice {fileCents}, sus propias cantidades y tarifas dan {ownCents}.',
  'verify.finding.line-field':
    'Línea {lineId}, {field}: el archivo dice “{file}”, su propio trabajo y tarifas dan “{own}”.',
  'verify.finding.line-added': 'La línea {lineId} ({description}) no se sigue de ningún trabajo del archivo.',
  'verify.finding.line-missing':
    'La línea {lineId} ({description}, {ownCents}) se sigue del trabajo del archivo y no está en su estado de costos.',
  'verify.finding.line-twice': 'Dos líneas del estado de costos llevan un mismo número.',
  'verify.finding.section-sum': '{section}: el subtotal dice {printedCents}, sus líneas suman {sumCents}.',
  'verify.finding.section-amount':
    '{section}: el subtotal dice {fileCents}, el trabajo y las tarifas del archivo dan {ownCents}.',
  'verify.finding.section-missing': '{section}, {ownCents}: esta sección no está en el estado de costos.',
  'verify.finding.section-added':
    'El estado de costos tiene una sección que no se sigue de ningún trabajo del archivo.',
  'verify.finding.total-sum': 'El total dice {printedCents}, las líneas suman {sumCents}.',
  'verify.finding.total-amount':
    'El total dice {fileCents}, el trabajo y las tarifas del archivo dan {ownCents}.',
  'verify.finding.statement-field':
    'Estado de costos, {field}: el archivo dice “{file}”, su propio trabajo y tarifas dan “{own}”.',
  'verify.finding.demand-above':
    'La demanda de {demandCents} es más que los {leftCents} que quedan de {totalCents} cuando otras reclamaciones piden {othersCents}.',

  'verify.finding.water-gallons':
    'Agua perdida: el archivo dice {file} gal aquí, y {own} gal donde nace la cifra.',
  'verify.finding.water-estimate':
    'Agua perdida, {field}: lo observado da {own} gal, y el archivo dice otra cosa.',
  'verify.finding.water-challenges':
    'Agua perdida: el archivo lista {file} dudas sobre la cifra, lo observado da {own}.',
  'verify.finding.water-sentence': 'Agua perdida: el archivo dice “{file}”, lo observado da “{own}”.',
  'verify.finding.water-times': 'Agua perdida: sus horas están dos veces en el archivo y difieren.',
  'verify.finding.test-day':
    'Prueba de flujo de {at}: el archivo dice que se hizo el {file}, por el reloj fue el {own}.',
  'verify.finding.test-side':
    'Prueba de flujo de {at}: está del lado equivocado del choque, que fue a las {since}.',
  'verify.finding.last-test':
    'La última prueba de flujo antes del choque sería de {at}; la más reciente del archivo es de {own}.',
  'verify.finding.test-class':
    'Prueba de flujo de {at}: el archivo dice clase {file}, sus lecturas dan {own}.',
  'verify.finding.timeline-order': 'Cronología, suceso {number}: {at} está después de {before}.',
  'verify.finding.not-in-timeline': '{field}: {at} no es un suceso de la cronología.',
  'verify.finding.returned-before-struck': 'Volvió a servicio a las {at}, antes de salir a las {since}.',
  'verify.finding.not-that-correction':
    'Un punto de seguridad consta como corregido el {at}. El registro que nombra, {submissionId}, es de la clase {kind} y se registró el {recordedAt}.',
  'verify.finding.not-in-manifest': '{path}: el registro {submissionId} no está entre los del expediente.',

  'verify.finding.picture-changed':
    'Página {page}: la imagen de {exhibitId} no es la que se listó. Su SHA-256 es {file}; la lista dice {own}.',
  'verify.finding.picture-missing': 'La imagen de {exhibitId} no está en ninguna página (SHA-256 {own}).',
  'verify.finding.picture-added': 'Página {page}: una imagen que el expediente no lista (SHA-256 {file}).',
  'verify.finding.picture-moved': 'Página {page}: la imagen de {exhibitId} no está en su lugar.',
  'verify.finding.annotation':
    'Página {page}: {count, plural, one {una nota, sello o campo cubre} other {# notas, sellos o campos cubren}} la página.',
  'verify.finding.overlay':
    'Página {page}: {count, plural, one {un dibujo ajeno cubre} other {# dibujos ajenos cubren}} la página.',
  'verify.finding.paper-pages': 'Páginas de documentos: se listaron {own}, hay {count}.',
  'verify.finding.paper-differs': 'Página {page}: el documento dice “{printed}” aquí, su original “{own}”.',
  'verify.finding.hidden-text': 'Página {page}: contiene texto que no se ve.',

  'verify.finding.covered-text': 'Página {page}: algo está pintado encima de su texto.',
  'verify.finding.strange-drawing':
    'Página {page}: está dibujada de un modo que ningún expediente usa ({what}).',
  'verify.finding.file-acts':
    'El archivo puede cambiar lo que muestra; ningún expediente puede hacerlo ({what}).',
  'verify.finding.picture-altered': 'Página {page}: una imagen no se muestra tal como son sus bytes.',
  'verify.finding.outline-differs':
    'Índice: dice «{printed}» donde los títulos del expediente dicen «{own}».',
  'verify.finding.printed-moved':
    'Página {page}, «{under}»{hasOf, select, yes {, {of}} other {}}: «{own}» no está en su lugar.',
  'verify.finding.archive-misnamed':
    'Originales, {name}: es el original de {exhibitId}, con otro nombre o número.',
  'verify.finding.archive-no-data': 'Originales: falta la copia de los datos del expediente, {name}.',

  'verify.finding.printed-differs':
    'Página {page}, “{under}”{hasOf, select, no {} other {, {of}}}: la página dice “{printed}”, los datos del expediente dan “{own}”.',
  'verify.finding.printed-words':
    'Página {page}, “{under}”: la página dice “{printed}”, los datos del expediente dan “{own}”: otras palabras, las mismas cifras. Otra edición de este programa puede escribirlo así.',
  'verify.finding.printed-missing':
    'Desde la página {page}, “{under}”: {count, plural, one {falta un texto} other {faltan # textos}}, desde “{own}”.',
  'verify.finding.printed-added':
    'Página {page}, cerca de “{under}”: la página dice más de lo que dan los datos: “{printed}”.',
  'verify.finding.printed-more':
    'Las páginas difieren en {count, plural, one {un lugar más} other {# lugares más}}.',
  'verify.finding.page-without-number': 'La página {page} no lleva su número entre las páginas.',
  'verify.finding.running-text':
    'Página {page}: su encabezado o pie dice algo que no es del expediente: “{printed}”.',
  'verify.finding.pages-missing': 'Faltan páginas: {pages} de {said}. El archivo tiene {count}.',
  'verify.finding.pages-added': 'Las páginas dicen que son {said}; el archivo tiene {count}.',
  'verify.finding.pages-moved': 'La página {page} del archivo dice que es la página {printed}.',

  'verify.finding.archive-too-large':
    'El archivo de originales tiene {megabytes} MB; se leen {most} MB como máximo.',
  'verify.finding.archive-broken': 'El archivo de originales no se pudo abrir: {reason}',
  'verify.finding.archive-name-twice': 'El archivo de originales contiene dos archivos llamados {name}.',
  'verify.finding.archive-changed':
    'Originales, {name}: no es el {exhibitId} que se registró. Su SHA-256 es {file}; el expediente dice {own}.',
  'verify.finding.archive-missing': 'Originales: falta {exhibitId} (SHA-256 {own}).',
  'verify.finding.archive-added': 'Originales, {name}: el expediente no lista este archivo (SHA-256 {file}).',
  'verify.finding.archive-list': 'Originales, {name}: su propia lista dice SHA-256 {own}; es {file}.',
  'verify.finding.archive-list-missing':
    'Originales: su propia lista nombra {name}, que no está (SHA-256 {own}).',
  'verify.finding.archive-not-listed': 'Originales, {name}: su propia lista no lo nombra.',
  'verify.finding.archive-no-list': 'Originales: falta su lista, {name}.',
  'verify.finding.archive-data': 'Originales, {name}: no son los datos que lleva el PDF.',

  'verify.finding.keys-not-keys':
    'Las claves no se pudieron leer: dé el juego de claves del servicio de agua como JSON (JWK set).',
  'verify.finding.signature-unreadable':
    'La firma no se pudo leer: dé el archivo .jws tal como vino con el expediente.',
  'verify.finding.signature-algorithm': 'La firma no es del tipo que llevan los expedientes (ES256).',
  'verify.finding.signature-other-key': 'La firma no se hizo con ninguna de las claves dadas.',
  'verify.finding.signature-wrong': 'La firma no es de la clave que nombra.',
  'verify.finding.signature-other-file':
    'La firma es de otro archivo: reclamación {claimNumber}, revisión {revision}, SHA-256 {file}. El de este es {own}.',
  'verify.finding.signature-other-claim':
    'La firma es de la reclamación {claimNumber}, revisión {revision}, y el archivo dice otra cosa.',

  'verify.command.usage':
    'npm run -s verify -- EXPEDIENTE.pdf [ORIGINALES.zip] [--signature ARCHIVO.jws] [--keys JWKS.json] [--json] [--lang en|es]\n\nRecalcula cada cifra y cada hash de un expediente desde su propio archivo, y de sus originales si se dan, y dice dónde difieren. Salida 0: coherente. 1: difiere, o la firma no corresponde. 2: no se pudo comprobar.\n\n--signature es el archivo que se descarga junto al expediente (los originales lo contienen como packet.pdf.jws). --keys son las claves públicas de la entidad: descárguelas de su propia dirección, GET /api/packet-keys, sin iniciar sesión; una firma vale lo que vale el lugar de donde vinieron sus claves.',
  'problem.verify-unknown-option': 'No existe la opción {option}. Vea --help.',
  'problem.verify-one-file':
    'Nombre un expediente y como máximo un archivo de originales; se nombraron {count}. Vea --help.',
  'problem.verify-keys-missing': 'Dé también las claves: --keys JWKS.json.',

  'verify.page.lead':
    'Un expediente lleva las horas, tarifas y lecturas de las que salen sus cifras. Esta página recalcula cada cifra y cada hash desde el archivo y dice dónde algo no concuerda.',
  'verify.page.private': 'No se sube nada: el archivo se lee en este navegador y no va a ninguna parte.',
  'verify.page.choose': 'Elegir archivos',
  'verify.page.drop':
    'Suelte aquí el expediente (PDF). Sus originales (ZIP), firma (JWS) y claves (JSON) pueden acompañarlo.',
  'verify.page.chosen': 'Archivos',
  'verify.page.kind.pdf': 'expediente',
  'verify.page.kind.archive': 'originales',
  'verify.page.kind.signature': 'firma',
  'verify.page.kind.keys': 'claves',
  'verify.page.kind.unknown': 'no se usa: ni PDF, ni ZIP, ni JWS, ni JSON',
  'verify.page.remove': 'Quitar {name}',
  'verify.page.need-pdf': 'Añada el expediente mismo, un PDF.',
  'verify.page.working': 'Comprobando …',
  'verify.page.findings': 'Dónde difiere',
  'verify.page.what': 'Qué se comprobó',
  'verify.page.fault':
    'Esta página falló, lo que no dice nada del expediente. Vuelva a cargarla e inténtelo de nuevo. ({reason})',
  'verify.page.keys-online': 'Las claves se pidieron a esta dirección.',
  'verify.limits':
    'El texto se compara signo por signo y por su lugar, las imágenes byte por byte. No se ven las figuras que alguien dibujó junto al texto, ni un tipo de letra cuyos signos recibieron otro aspecto: mire también la página.',
  'verify.page.home': 'Hidrantes fuera de servicio',
};

import type { exhibits as english } from '../en/exhibits.ts';

/** Spanish words: a packet's photos and papers, its archive and revisions, and the job that makes it. */
export const exhibits: Record<keyof typeof english, string> = {
  'packet.manifest.content': 'Todo lo que dice este expediente, como datos',
  'packet.photo.original-hash': 'Original: SHA-256 {sha256}',
  'packet.photo.display-hash': 'Copia mostrada aquí ({width} × {height} píxeles): SHA-256 {sha256}',
  'packet.photo.place': 'Posición de la cámara: {latitude}, {longitude} (WGS 84).',

  'packet.photo.place-from':
    'Posición de la cámara: {latitude}, {longitude} (WGS 84), a {distance} del hidrante.',
  'packet.photo.captured-both': 'Captada el {at} (fuente: cámara, {camera}).',
  'packet.photo.captured-camera': 'Captada el {at} (fuente: cámara, tal como la escribió en el archivo).',
  'packet.photo.captured-declared':
    'Captada el {at} (fuente: quien la entregó; el archivo no contiene la hora de su cámara).',
  'packet.photo.captured-person': 'Captada el {at} (fuente: quien la entregó); según la cámara, {camera}.',
  'packet.photo.recorded-arrived': 'Huella registrada el {recorded}, bytes llegados el {arrived}.',
  'packet.photo.times-differ': 'Entre ambas hay {apart} de diferencia.',
  'packet.photo.minutes': '{minutes, plural, one {# minuto} other {# minutos}}',
  'packet.photo.hours': '{hours} h',
  'packet.photo.taken-after':
    'La hora de captura es posterior a su llegada al servidor, así que el reloj que la dio estaba mal.',
  'packet.photo.arrived-before': 'El mismo archivo había llegado antes de que este registro lo nombrara.',

  'packet.warning.residual-below-rating':
    'La presión residual bajó a {residualPsi}, por debajo de {ratingResidualPsi}. La capacidad se calcula a {ratingResidualPsi} a partir de esta lectura y es menor que lo que fluyó.',
  'packet.warning.static-below-rating':
    'La presión estática, {staticPsi}, no supera {ratingResidualPsi}, así que no hay caudal disponible a esa presión residual.',
  'packet.warning.static-weak':
    'La presión estática, {staticPsi}, es menor que {weakStaticPsi}: un sistema débil. La capacidad indicada es a {ratingResidualPsi}; una regla que clasifica a la mitad de la estática ({halfStaticPsi}) daría otra.',
  'packet.warning.rated-at-half-static':
    'La presión estática, {staticPsi}, es menor que {weakStaticPsi}, así que la capacidad se da a su mitad, {ratingResidualPsi}, y no se compara con la de otra presión residual.',
  'packet.warning.capacity-uncertain':
    'Según estas lecturas la capacidad puede estar entre {lowGpm} y {highGpm}; la cifra única representa ese intervalo.',
  'packet.warning.flowed-at-residual-hydrant':
    'El hidrante {hydrantId} fluía mientras se leía su propia presión, así que la caída incluye las pérdidas de su cuerpo y su ramal. La capacidad es entonces la del hidrante, y menor que la de la tubería principal.',
  'packet.warning.gauge-out-of-calibration':
    'El manómetro {gaugeId} se calibró por última vez el {calibratedOn}, {days} días antes de esta prueba; la empresa admite {mostDays}. Las lecturas se toman como fueron, y la cifra es tan segura como ese manómetro.',
  'packet.warning.gauge-calibration-unknown':
    'No consta cuándo se calibró el manómetro {gaugeId}. Las lecturas se toman como fueron, y la cifra es tan segura como ese manómetro.',
  'packet.warning.gauge-calibrated-after-test':
    'El manómetro {gaugeId} consta como calibrado el {calibratedOn}, después de la prueba del {testedOn}. Esa fecha no vale para esta prueba, y la cifra es tan segura como ese manómetro.',
  'packet.warning.reading-above-gauge':
    'El manómetro {gaugeId} llega hasta {rangePsi} y consta con una lectura de {readPsi}. Uno de los dos datos está mal, y la cifra se basa en la lectura.',
  'packet.warning.static-jumped':
    'La presión estática es {changePsi} {direction, select, up {mayor} other {menor}} que en la prueba anterior ({previousStaticPsi} el {testedOn}). Las dos pruebas fueron con el sistema en estados distintos, y una diferencia entre sus cifras no es solo del hidrante.',
  'packet.warning.flow-above-last-test':
    'El caudal suma {measuredFlowGpm}; según la prueba anterior ({testedOn}) no podrían fluir más de {mostFlowGpm} sin presión alguna. Una de las dos pruebas no describe la tubería principal como está ahora.',
  'packet.warning.class-not-at-target':
    'La clase es según el caudal a {ratingResidualPsi}, no según el caudal a {targetResidualPsi} que también se indica.',
  'packet.warning.flow-implausible':
    'El caudal suma {measuredFlowGpm}, más de {mostFlowGpm}, que pocos hidrantes dan. La cifra se basa en los diámetros y lecturas del pitot que constan.',
  'packet.warning.pitot-too-low':
    'Boca {outlet}: el pitot marcó {pitotPsi}, menos de {minimumPsi}, donde la aguja se lee mal. Por eso el caudal de esta boca es menos seguro.',
  'packet.warning.pitot-too-high':
    'Boca {outlet}: el pitot marcó {pitotPsi}, más de {maximumPsi}, el intervalo usual. Por eso el caudal de esta boca es menos seguro.',
  'packet.warning.pitot-above-static':
    'Boca {outlet}: el pitot marcó {pitotPsi}, más que la presión estática, {staticPsi}. Puede ser si el hidrante que fluye está mucho más bajo que el otro; si no, una de las dos lecturas está mal.',
  'packet.warning.pumper-pitot-below-table':
    'Boca {outlet}: no hay factor para una boca de autobomba por debajo de {tablePsi}, y el pitot marcó {pitotPsi}; se usa el factor de {tablePsi}. Por eso el caudal de esta boca es menos seguro.',
  'packet.warning.outlet-may-be-pumper':
    'La boca {outlet} mide {diameterIn} de ancho y se calcula como boca de manguera. Si es de autobomba, su caudal sale aquí hasta una sexta parte más alto.',
  'packet.warning.coefficient-unusual':
    'Boca {outlet}: un coeficiente de {coefficient} es poco común (0.90 redondeada, 0.80 de borde vivo, 0.70 saliente hacia dentro). El caudal de esta boca es proporcional a él.',
  'packet.warning.drop-too-small':
    'La presión bajó solo {dropPsi} ({dropPercent} % de la estática). Hace falta al menos {neededPsi} ({neededPercent} %) para clasificar un hidrante, así que no se da capacidad: el caudal medido lo hubo, y no se sabe cuánto más podría dar.',

  'packet.papers.title': 'Documentos',
  'packet.papers.how':
    'Informe policial, facturas y otros documentos, cada página como se entregó, a la escala de este papel. No se conservan sus enlaces, programas, campos de formulario ni adjuntos; los originales están en el archivo.',
  'packet.papers.list': 'Documentos en este expediente',
  'packet.papers.not-included': 'Listados y no incluidos',
  'packet.papers.pages': '{pages, plural, one {# página} other {# páginas}}',
  'packet.papers.exhibit': 'Anexo',
  'packet.papers.what': 'Documento',
  'packet.papers.recorded': 'Registrado',
  'packet.papers.here': 'Aquí',
  'packet.papers.page': '{exhibitId}, {title}: página {page} de {pages}',
  'packet.papers.page-alt': 'Página {page} de {pages} de {title}',
  'packet.paper.title': '{what}: {title}{hasNumber, select, yes {, n.º {number}} other {}}',
  'packet.paper.awaited': 'Pendiente: el archivo no había llegado cuando se hizo este expediente.',
  'packet.paper.unsupported-type':
    'No incluido: aquí no se pueden colocar archivos de tipo {mediaType}. El original está en el archivo.',
  'packet.paper.corrupt': 'No incluido: el archivo está dañado o cortado. El original está en el archivo.',
  'packet.paper.hash-differs': 'No incluido: los bytes guardados no tienen el hash registrado.',
  'packet.paper.too-large':
    'No incluido: el archivo es demasiado grande para colocarlo aquí. El original está en el archivo.',
  'packet.paper.too-many':
    'No incluido: este expediente ya contiene todas las páginas que admite. El original está en el archivo.',
  'packet.paper.too-many-pages':
    'No incluido: el archivo tiene más de 200 páginas. El original está en el archivo.',
  'packet.paper.password':
    'No incluido: el archivo está protegido con contraseña. El original está en el archivo.',
  'packet.paper.no-pages': 'No incluido: el archivo no tiene páginas. El original está en el archivo.',

  'packet.papers.arrived': 'Llegó el {at}',
  'packet.manifest.wording': 'Las palabras de este expediente, tal como se emitió',
  'packet.manifest.hash': 'SHA-256 del original',
  'packet.manifest.pages': 'Páginas',
  'packet.state.pages': 'Mostrado',
  'packet.check.site':
    'Este archivo puede comprobarse en {address}, donde se suelta y no se envía nada, o con la orden del mismo programa «npm run -s verify -- packet.pdf». «Coherente» significa que cada cifra y cada huella se siguen de los registros y tarifas que lleva; «emitido por» significa que la firma es de la empresa de agua, así que nadie lo ha cambiado desde entonces.',
  'packet.check.letter':
    'Cualquiera puede comprobar este archivo en {address}; su lista de registros dice qué significan las respuestas.',
  'packet.check.command':
    'Este archivo puede comprobarse con el programa de la empresa de agua: «npm run -s verify -- packet.pdf». «Coherente» significa que cada cifra y cada huella se siguen de los registros y tarifas que lleva; «emitido por» significa que la firma es de la empresa de agua, así que nadie lo ha cambiado desde entonces.',

  'packet.changes.title': 'Qué ha cambiado desde la revisión {revision}',
  'packet.changes.added':
    '{count, plural, =0 {No se añadió ningún registro desde la revisión {revision}.} one {Se añadió un registro desde la revisión {revision}:} other {Se añadieron # registros desde la revisión {revision}:}}',
  'packet.changes.record': '{kind}, registrado el {at}',

  'packet.summary.title': 'Resumen',
  'packet.summary.hydrant': 'Hidrante',
  'packet.summary.struck': 'Golpeado',
  'packet.summary.since': 'Fuera de servicio desde',
  'packet.summary.returned': 'De vuelta en servicio',
  'packet.summary.out': 'Fuera de servicio durante',
  'packet.summary.out-hours': '{hours} h',
  'packet.summary.total': 'Relación de costos',
  'packet.summary.demand': 'Esta reclamación pide',
  'packet.summary.pay-to': 'Pagar a',
  'packet.summary.tax-form': 'Formulario fiscal',
  'packet.summary.holds': 'Este expediente contiene',
  'packet.summary.counts':
    '{records, plural, one {# registro} other {# registros}}; {photos, plural, one {# fotografía} other {# fotografías}}, {shown} de ellas mostradas; {papers, plural, one {# documento} other {# documentos}}, {merged} de ellos incluidos',
  'packet.map.title': 'Dónde está',
  'packet.map.alt':
    'Croquis: el hidrante golpeado en el centro, {count, plural, =0 {ningún otro hidrante cerca} one {otro hidrante cerca} other {otros # hidrantes cerca}}. El norte está arriba.',
  'packet.map.north': 'N',
  'packet.map.note':
    'Dibujado a partir del inventario de hidrantes de la empresa, sin calles. El hidrante golpeado es el que tiene un círculo; el norte está arriba. Los números son los del inventario.',

  'packet.time.worked': 'trabajadas {worked} h',
  'packet.time.class': '{time}, × {multiplier}',

  'packet.archive.read-me':
    'Archivo que acompaña al expediente de la reclamación {claimNumber}, revisión {revision}. Cada fichero con su SHA-256 en hexadecimal.',
  'packet.archive.not-here': 'No está en este archivo:',
  'packet.archive.times': 'Cuándo se registró cada huella y cuándo llegaron los bytes (UTC):',
  'packet.archive.time': 'registrada {recorded}, llegados {arrived}',
  'packet.archive.awaited': 'no había llegado',
  'packet.archive.hash-differs': 'los bytes guardados no tienen el hash registrado',
  'packet.archive.too-large': 'demasiado grande para este archivo',

  'problem.changes-needed':
    'Diga qué ha cambiado desde la revisión {revision} y por qué: figura justo después de la carta de la nueva revisión.',
  'problem.packet-job-unknown': 'No hay tal tarea para esta reclamación. Empiece de nuevo.',
  'packet.job.queued': 'En espera de empezar',
  'packet.job.load': 'Leyendo los registros',
  'packet.job.photos': 'Preparando las fotografías',
  'packet.job.papers': 'Leyendo los documentos',
  'packet.job.pages': 'Dibujando las páginas',
  'packet.job.archive': 'Empaquetando los originales',
  'packet.job.sign': 'Firmando',
  'packet.job.done': 'Hecho',
  'packet.job.failed': 'Ha fallado',

  'claim.building-packet': 'Preparando el expediente…',
  'claim.progress': '{done} de {total}',
  'claim.changes': 'Qué ha cambiado desde la revisión {revision}, y por qué',
  'claim.changes-hint':
    'Figura justo después de la carta de la próxima revisión. La vista previa no lo necesita.',
  'claim.download-archive': 'Descargar los originales (zip)',
  'claim.download-signature': 'Descargar la firma',
  'claim.in-the-way': 'Antes de poder emitirlo:',

  'before-issuing.title': 'Con qué saldría este expediente',
  'before-issuing.objections':
    '{count, plural, =0 {Ninguna objeción con dinero está abierta.} one {Hay una objeción con dinero abierta, por {most}.} other {Hay # objeciones con dinero abiertas, la mayor por {most}.}}',
  'before-issuing.objections-unread': 'No se pudieron leer las objeciones.',
  'before-issuing.see-objections': 'Ver las objeciones',
  'before-issuing.accepted':
    '{count, plural, one {Una objeción aceptada se sigue cobrando:} other {# objeciones aceptadas se siguen cobrando:}}',
  'before-issuing.evidence':
    '{count, plural, =0 {Está todo lo que pide quien paga.} other {Falta de lo que pide quien paga: {list}.}}',
  'before-issuing.evidence-unread': 'No se pudo leer lo que pide quien paga.',
  'before-issuing.files':
    '{count, plural, =0 {Se incluyen todos los archivos.} one {Un archivo constará en la lista sin incluirse:} other {# archivos constarán en la lista sin incluirse:}}',
  'before-issuing.files-unread': 'Archivos que no se pueden incluir: una vista previa dice cuáles y por qué.',
  'claim.frozen-before': 'Nada ha cambiado desde la revisión {revision}: sigue siendo la emitida.',
};

import type { evidence as en } from '../en/evidence.ts';

/** Spanish words: what a photo's own data say, and the clocks beside each other, in the form and in the packet. */
export const evidence: Record<keyof typeof en, string> = {
  'evidence.apart':
    '{unit, select, minutes {{minutes} min} hours {{hours} h{minutes, plural, =0 {} other { # min}}} other {{days, plural, one {# día} other {# días}}}}',
  'evidence.clock.agree': 'El reloj de la cámara y el del teléfono coinciden.',
  'evidence.clock.no-camera-time': 'El archivo no contiene la hora de su cámara.',
  'evidence.clock.no-phone-time': 'El teléfono no indicó cuándo se escribió el archivo.',
  'evidence.clock.camera-ahead':
    'El reloj de la cámara va {apart} por delante del teléfono{zoned, select, no { (la cámara no escribió su zona horaria)} other {}}.',
  'evidence.clock.file-later':
    'El teléfono escribió el archivo {apart} después de la hora de la cámara{zoned, select, no { (la cámara no escribió su zona horaria)} other {}}: el reloj de la cámara va atrasado, o el archivo se copió o cambió después.',
  'evidence.clock.satellite-ahead':
    'El reloj de la cámara va {apart} por detrás de la hora que anotó su receptor de satélites{zoned, select, no { (la cámara no escribió su zona horaria)} other {}}.',
  'evidence.clock.satellite-behind':
    'El reloj de la cámara va {apart} por delante de la hora que anotó su receptor de satélites{zoned, select, no { (la cámara no escribió su zona horaria)} other {}}.',
  'evidence.device': 'Cámara: {device}.',
  'evidence.device-unknown': 'El archivo no nombra su cámara.',
  'evidence.place': 'Posición de la cámara: {latitude}, {longitude}.',
  'evidence.place-unknown': 'El archivo no contiene ninguna posición.',
  'evidence.satellite-time': 'Hora de satélite: {at}.',
  'evidence.source': 'Leído de los datos del propio archivo ({place}).',
  'evidence.source-none': 'El archivo no contiene datos de su captura (EXIF).',
  'problem.upload-budget':
    'Hoy esta sesión ha enviado {files, number} fotos y documentos, {megabytes, number} MB en total; una persona puede enviar {mostFiles, number} archivos o {mostMegabytes, number} MB al día. Envíe el resto después de medianoche o pida a un compañero que lo entregue; quien administra el servicio puede aumentar uploadsPerPersonDay.',
  'form.photo-not-readable':
    'Este archivo está dañado o no es lo que dice su nombre. Se guarda y se envía tal cual, y el expediente lo enumera sin mostrarlo. Tómela de nuevo si puede.',
  'form.pdf-not-pdf':
    'Se llama PDF y no lo es, o le falta el principio. Se guarda y se envía tal cual, y sus páginas no se pueden mostrar. Añádalo de nuevo desde su origen si puede.',
  'form.photo-data-unread': 'Lo que la cámara escribió en el archivo no se pudo leer aquí en este momento.',
  'packet.photo.display-of':
    'Copia para mostrar del anexo {exhibit} ({width} × {height} px): SHA-256 {sha256}',
  'packet.photo.too-slow':
    'No incluida: la imagen no se pudo descomprimir en el tiempo permitido. El original se conserva.',
  'packet.paper.too-slow':
    'No incluido: la imagen no se pudo descomprimir en el tiempo permitido. El original está en el archivo adjunto.',
};

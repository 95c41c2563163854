/** English words: what a photo's own data say, and the clocks beside each other, in the form and in the packet. */
export const evidence = {
  'evidence.apart':
    '{unit, select, minutes {{minutes} min} hours {{hours} h{minutes, plural, =0 {} other { # min}}} other {{days, plural, one {# day} other {# days}}}}',
  'evidence.clock.agree': 'The camera’s clock and the phone’s agree.',
  'evidence.clock.no-camera-time': 'The file holds no time of its camera.',
  'evidence.clock.no-phone-time': 'The phone did not tell when the file was written.',
  'evidence.clock.camera-ahead':
    'The camera’s clock is {apart} ahead of the phone’s{zoned, select, no { (the camera wrote no time zone)} other {}}.',
  'evidence.clock.file-later':
    'The phone wrote the file {apart} after the camera’s time{zoned, select, no { (the camera wrote no time zone)} other {}}: the camera’s clock is behind, or the file was copied or changed since.',
  'evidence.clock.satellite-ahead':
    'The camera’s clock is {apart} behind the time its satellite receiver wrote{zoned, select, no { (the camera wrote no time zone)} other {}}.',
  'evidence.clock.satellite-behind':
    'The camera’s clock is {apart} ahead of the time its satellite receiver wrote{zoned, select, no { (the camera wrote no time zone)} other {}}.',
  'evidence.device': 'Camera: {device}.',
  'evidence.device-unknown': 'The file does not name its camera.',
  'evidence.place': 'The camera’s position: {latitude}, {longitude}.',
  'evidence.place-unknown': 'The file holds no position.',
  'evidence.satellite-time': 'Satellite time {at}.',
  'evidence.source': 'Read from the file’s own data ({place}).',
  'evidence.source-none': 'The file holds no data of its capture (EXIF).',
  'problem.upload-budget':
    'Today this sign-in has sent {files, number} photos and documents, {megabytes, number} MB together; one person may send {mostFiles, number} files or {mostMegabytes, number} MB a day. Send the rest after midnight, or have a colleague deliver it; whoever runs the service can raise uploadsPerPersonDay.',
  'form.photo-not-readable':
    'This file is damaged, or is not what its name says. It is kept and sent as it is, and the packet lists it without showing it. Take it again if you can.',
  'form.pdf-not-pdf':
    'This is called a PDF and is none, or is cut short at its head. It is kept and sent as it is, and its pages cannot be shown. Add it again from where it came from if you can.',
  'form.photo-data-unread': 'What the camera wrote into the file could not be read here just now.',
  'packet.photo.display-of': 'Display copy of exhibit {exhibit} ({width} × {height} px): SHA-256 {sha256}',
  'packet.photo.too-slow':
    'Not included: the picture could not be unpacked in the time allowed. The original is kept.',
  'packet.paper.too-slow':
    'Not included: the picture could not be unpacked in the time allowed. The original is in the archive.',
};

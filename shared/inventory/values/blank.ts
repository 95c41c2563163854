/** What people and programs write for "nothing known". Compared after lower case and without surrounding space. */
const blanks = new Set([
  '',
  '-',
  '--',
  '---',
  '.',
  '?',
  '??',
  '???',
  'n/a',
  'na',
  '#n/a',
  'n.a.',
  'nan',
  'null',
  '<null>',
  '(null)',
  'none',
  'nil',
  'unknown',
  'unk',
  'unk.',
  'u/k',
  'tbd',
  'not available',
  'not known',
  'not applicable',
  'blank',
  '(blank)',
  'undefined',
  'desconocido',
  'desconocida',
  's/d',
  'sin dato',
  'sin datos',
  'no aplica',
  'ninguno',
  'ninguna',
  'unbekannt',
]);

/** True for a value that says nothing, such as `N/A`, `<Null>` or `?`. */
export const isBlank = (text: string): boolean => blanks.has(text.trim().toLowerCase());

/** Lower case, no accents, anything but letters and digits a single space: `Dry-Barrel ` and `dry barrel` become one. */
export const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();

/** As {@link folded} but without the spaces, for comparing column names: `fire_hydrant:type` is `firehydranttype`. */
export const compact = (text: string): string => folded(text).replaceAll(' ', '');

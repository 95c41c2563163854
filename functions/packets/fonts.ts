import { readFileSync } from 'node:fs';

/**
 * The faces that every packet embeds: Atkinson Hyperlegible, Latin and extended Latin, under the SIL Open Font License
 * (fonts/OFL.txt). The folder lies beside this module, and beside the bundle where the handler is one file.
 */
const files = {
  regular: 'atkinson-hyperlegible-latin-400-normal.woff',
  bold: 'atkinson-hyperlegible-latin-700-normal.woff',
  regularExtended: 'atkinson-hyperlegible-latin-ext-400-normal.woff',
  boldExtended: 'atkinson-hyperlegible-latin-ext-700-normal.woff',
} as const;
export type FaceName = keyof typeof files;
export const faceNames = Object.keys(files) as FaceName[];

const read = new Map<FaceName, Buffer>();

/** Bytes of one face, read once. Throws when the folder was not deployed: a packet without its letters is a fault. */
export function faceBytes(name: FaceName): Buffer {
  const known = read.get(name);
  if (known) return known;
  const bytes = readFileSync(new URL(`./fonts/${files[name]}`, import.meta.url));
  read.set(name, bytes);
  return bytes;
}

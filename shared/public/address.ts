/**
 * Where a hydrant's page stands. Ids are anything a utility ever painted on a barrel, so they are spelled in a way
 * that is safe as a file name on every system, and one-to-one even where upper and lower case are the same: capitals,
 * digits and inner hyphens stay, every other byte of the id's UTF-8 becomes `_` and two hex digits.
 */
const plain = /[A-Z0-9-]/;
/** Device names that Windows refuses as file names, whatever follows. */
const reserved = /^(CON|PRN|AUX|NUL|COM[0-9]|LPT[0-9])$/;
/** Most file systems allow 255 bytes a name; longer spellings go on in a folder. */
const longestName = 120;

const hexByte = (byte: number): string => `_${byte.toString(16).padStart(2, '0')}`;

/** `H-0142` stays `H-0142`; `h 7/2` becomes `_68_207_2f2`. Contains only `A-Z 0-9 - _ a-f /`. */
export function hydrantFile(hydrantId: string): string {
  const bytes = new TextEncoder().encode(hydrantId);
  const name = [...bytes]
    .map((byte, index) => {
      const sign = String.fromCharCode(byte);
      const stays = plain.test(sign) && !(sign === '-' && index === 0);
      return stays && !(index === 0 && reserved.test(hydrantId)) ? sign : hexByte(byte);
    })
    .join('');
  return name.match(new RegExp(`.{1,${longestName}}`, 'g'))?.join('/') ?? '';
}

/** The id that is spelled so; null for a name that `hydrantFile` never gives. */
export function hydrantOfFile(name: string): string | null {
  if (!/^(?:[A-Z0-9-]|_[0-9a-f]{2})+$/.test(name)) return null;
  const bytes = [...name.matchAll(/_([0-9a-f]{2})|[A-Z0-9-]/g)].map(([sign, hex]) =>
    hex === undefined ? sign.charCodeAt(0) : Number.parseInt(hex, 16),
  );
  try {
    const id = new TextDecoder('utf-8', { fatal: true }).decode(new Uint8Array(bytes));
    return hydrantFile(id) === name ? id : null;
  } catch {
    return null;
  }
}

/** Path of a page in a language: the utility's own language stands at the root, the other in its folder. */
export function pagePath(page: string, locale: string, utilityLocale: string): string {
  return locale === utilityLocale ? `/${page}` : `/${locale}/${page}`;
}
export const hydrantPath = (hydrantId: string): string => `hydrants/${hydrantFile(hydrantId)}/`;

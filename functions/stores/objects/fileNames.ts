/**
 * Keys as paths of a file system, one to one, whatever the key holds (hydrant ids are free text) and whatever the file
 * system cannot hold. Lower-case letters, digits, `-`, `_` and inner dots stand for themselves, so ordinary keys can be
 * read off the disk; every other byte of the key's UTF-8 becomes `%xx`. Upper case is escaped too, because `H-1` and
 * `h-1` are one file on many disks.
 */

/** File systems take names of 255 bytes; longer ones go on in a folder inside, marked by `~`, which no escape makes. */
const longestName = 200;
const plain = /[a-z0-9_-]/;

function escapeSegment(segment: string): string {
  // An empty segment (`a//b`) needs a name; a lone percent sign is none of the escapes.
  if (segment === '') return '%';
  let escaped = '';
  for (const byte of Buffer.from(segment)) {
    const char = String.fromCharCode(byte);
    escaped += plain.test(char) || char === '.' ? char : `%${byte.toString(16).padStart(2, '0')}`;
  }
  // Dots at either end: `.`, `..`, hidden files, and names that some systems cut.
  return escaped
    .replace(/^\.|\.$/g, '%2e')
    .replace(
      /^(con|prn|aux|nul|com\d|lpt\d)(?=$|\.)/,
      (word) => `%${word.charCodeAt(0).toString(16)}${word.slice(1)}`,
    );
}

function unescapeSegment(escaped: string): string {
  if (escaped === '%') return '';
  return Buffer.from(
    escaped.replace(/%([0-9a-f]{2})/g, (_, hex: string) => String.fromCharCode(parseInt(hex, 16))),
    'latin1',
  ).toString('utf8');
}

/** The names of the folders and the file that hold a key. Never `..`, never absolute. */
export function namesOf(key: string): string[] {
  return key.split('/').flatMap((segment) => {
    const escaped = escapeSegment(segment);
    const pieces: string[] = [];
    for (let at = 0; at < escaped.length; at += longestName) {
      const more = at + longestName < escaped.length;
      pieces.push(escaped.slice(at, at + longestName) + (more ? '~' : ''));
    }
    return pieces;
  });
}

/** The key that `namesOf` gave these names to. */
export function keyOf(names: readonly string[]): string {
  const segments: string[] = [];
  let begun = '';
  for (const name of names) {
    if (name.endsWith('~')) begun += name.slice(0, -1);
    else {
      segments.push(unescapeSegment(begun + name));
      begun = '';
    }
  }
  return segments.join('/');
}

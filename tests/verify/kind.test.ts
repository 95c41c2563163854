import { zipSync } from 'fflate';
import { expect, it } from 'vitest';
import { kindOf } from '../../shared/verify/file/kind.ts';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

it.each([
  ['a PDF', bytes('%PDF-1.7\n%'), 'pdf'],
  ['an archive', zipSync({ 'a.txt': bytes('a') }), 'archive'],
  // Stored, not deflated: the paper's own head stands among the first bytes.
  ['an archive that begins with a PDF', zipSync({ 'paper.pdf': bytes('%PDF-1.7') }, { level: 0 }), 'archive'],
  ['an empty archive', zipSync({}), 'archive'],
  ['a signature', bytes('eyJhbGciOiJFUzI1NiJ9.e30.c2ln\n'), 'signature'],
  ['a key set', bytes('{"keys": []}'), 'keys'],
  ['one key', bytes('{"kty": "EC"}'), 'keys'],
  ['other JSON', bytes('{"a": 1}'), 'unknown'],
  ['a letter', bytes('Dear adjuster, see www.example.org'), 'unknown'],
  ['nothing', new Uint8Array(), 'unknown'],
] as const)('%s', (_, given, kind) => {
  expect(kindOf(given)).toBe(kind);
});

import { spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '../../infra/local/buildSite.ts';
import { issuedPacket } from '../support/issuedPacket.ts';
import { withData, withPrinted } from '../support/tamperPdf.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'verify-'));
  const { pdf, archive, jws, keys } = await issuedPacket();
  const other = await withData(pdf, () => undefined);
  const files: Record<string, string | Uint8Array> = {
    'packet.pdf': pdf,
    'originals.zip': archive,
    'packet.pdf.jws': jws,
    'keys.json': keys,
    'saved-anew.pdf': other,
    'tampered.pdf': await withPrinted(pdf, 3, '$187.43', '$187.44'),
    'half.pdf': pdf.slice(0, 20_000),
  };
  for (const [name, content] of Object.entries(files)) await writeFile(join(folder, name), content);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The command as a person starts it, from the folder where the files are. */
function run(...words: string[]): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [join(projectRoot, 'infra/local/commands/verify.ts'), ...words], {
      cwd: projectRoot,
      env: { ...process.env, INIT_CWD: folder, LC_ALL: 'C' },
    });
    let [out, err] = ['', ''];
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

describe('npm run verify', () => {
  it.each<[words: string, code: number, says: string]>([
    ['packet.pdf', 0, 'Consistent: nothing in it contradicts itself. This does not show who issued it.'],
    ['packet.pdf originals.zip --keys keys.json', 0, 'Issued by this utility'],
    ['packet.pdf --signature packet.pdf.jws --keys keys.json', 0, 'Issued by this utility'],
    ['packet.pdf --lang es', 0, 'Coherente'],
    [
      'saved-anew.pdf --signature packet.pdf.jws --keys keys.json',
      1,
      'The signature does not fit this file.',
    ],
    ['tampered.pdf', 1, 'Page 3, “Statement of costs”'],
    ['half.pdf', 2, 'cut short'],
    ['keys.json', 2, 'This is not a PDF'],
    ['--help', 0, 'Exit 0: consistent.'],
  ])('%s: exit %i', async (words, code, says) => {
    const ran = await run(...words.split(' '));
    expect(ran.out).toContain(says);
    expect([ran.code, ran.err]).toEqual([code, '']);
  });

  it.each([
    ['', 'Name one packet'],
    ['a.pdf b.zip c.zip', '3 were named'],
    ['nothing-here.pdf', 'nothing-here.pdf'],
    ['packet.pdf --loud', 'There is no option --loud'],
    ['packet.pdf --signature packet.pdf.jws', 'Give the keys as well'],
  ])('a command line that cannot be: %s', async (words, says) => {
    const ran = await run(...words.split(' ').filter((word) => word !== ''));
    expect(ran.code).toBe(2);
    expect(ran.err).toContain(says);
    expect(ran.out).toBe('');
  });

  it('answers as JSON, with a sentence for each finding', async () => {
    const { code, out } = await run('tampered.pdf', '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      outcome: 'differs',
      signature: { state: 'none' },
      findings: [
        {
          code: 'printed-differs',
          path: 'page.3',
          params: { page: 3, printed: '$187.44', own: '$187.43' },
          sentence: expect.stringContaining('$187.44'),
        },
      ],
    });
  });
});

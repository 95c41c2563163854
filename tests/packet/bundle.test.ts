import { spawnSync } from 'node:child_process';
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { handlerBundle } from '../../infra/aws/bundling.ts';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { demoClaim, demoContent } from '../support/demoClaim.ts';

/** The renderer as it is deployed: one file, with the fonts folder beside it and nothing else. */
const root = fileURLToPath(new URL('../..', import.meta.url));
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'packet-bundle-'));
  await writeFile(
    join(folder, 'entry.ts'),
    `import { readFileSync, writeFileSync } from 'node:fs';
     import { renderPacket } from '${root}functions/packets/pdf/render.ts';
     import { packetDocument } from '${root}shared/packet/document.ts';
     const content = JSON.parse(readFileSync(process.argv[2], 'utf8'));
     writeFileSync(process.argv[3], await renderPacket(packetDocument(content), () => { throw new Error('no photo'); }));`,
  );
  await build({
    target: handlerBundle.target,
    format: handlerBundle.format,
    minify: handlerBundle.minify,
    mainFields: [...handlerBundle.mainFields],
    banner: { js: handlerBundle.banner },
    entryPoints: [join(folder, 'entry.ts')],
    outfile: join(folder, 'out', 'index.mjs'),
    bundle: true,
    platform: 'node',
    absWorkingDir: root,
    logLevel: 'warning',
  });
  await cp(join(root, 'functions/packets/fonts'), join(folder, 'out', 'fonts'), { recursive: true });
});
afterAll(() => rm(folder, { recursive: true }));

it('builds the very same packet from a bundle, away from its sources', async () => {
  const { content } = await demoContent(demoClaim(), {}, { get: async () => null });
  const expected = await renderPacket(packetDocument(content), () => {
    throw new Error('no photo');
  });
  await writeFile(join(folder, 'content.json'), JSON.stringify(content));
  const ran = spawnSync(process.execPath, ['out/index.mjs', 'content.json', 'packet.pdf'], {
    cwd: folder,
    encoding: 'utf8',
  });
  expect(ran.stderr).toBe('');
  expect(ran.status).toBe(0);
  expect((await readFile(join(folder, 'packet.pdf'))).equals(Buffer.from(expected))).toBe(true);
});

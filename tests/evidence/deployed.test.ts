import { createHash } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { afterAll, expect, it } from 'vitest';
import { arrivalOf } from '../../functions/display/arrived.ts';
import { evidenceKey } from '../../functions/stores/evidence/byHash.ts';
import { createCopyStore } from '../../functions/stores/evidence/copies.ts';
import { openObjectStore } from '../../functions/stores/objects/open.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { environmentNames as names } from '../../shared/deployment/environment.ts';
import { tables } from '../../shared/deployment/tables.ts';
import { deployTo } from '../support/bundleHandler.ts';
import { HEIGHT, heicFile, WIDTH } from '../support/heicFile.ts';

const before = { ...process.env };
let folder: string;
afterAll(async () => {
  process.env = before;
  await rm(folder, { recursive: true, force: true });
});

it('the function as it is deployed, away from its sources, makes a copy of a HEIC photo that has arrived', async () => {
  folder = await mkdtemp(join(tmpdir(), 'display-bundle-'));
  const evidenceUrl = pathToFileURL(join(folder, 'evidence')).href;
  const elsewhere = pathToFileURL(join(folder, 'other')).href;
  Object.assign(process.env, {
    ...Object.fromEntries(Object.values(tables).map(({ environment }) => [environment, 'none'])),
    [names.utility]: JSON.stringify(demoUtility),
    [names.evidenceUrl]: evidenceUrl,
    [names.publishedUrl]: elsewhere,
    [names.inventoryUrl]: elsewhere,
    [names.networkUrl]: elsewhere,
    [names.tokenIssuer]: 'https://issuer.example',
    [names.tokenAudience]: 'someone',
    [names.evidenceLinkBase]: '/local/evidence',
    [names.evidenceLinkSecret]: 's'.repeat(43),
  });
  const heic = heicFile({ turns: 1 });
  const sha256 = createHash('sha256').update(heic).digest('hex');
  const objects = await openObjectStore(evidenceUrl);
  await objects.put(evidenceKey(sha256), heic, { contentType: 'image/heic' });

  const bundle = await deployTo(join(folder, 'task'), 'display');
  const { handler } = (await import(pathToFileURL(bundle).href)) as {
    handler: (event: unknown) => Promise<void>;
  };
  await handler(arrivalOf(evidenceKey(sha256)));

  const kept = await createCopyStore(objects).read(sha256);
  expect(kept?.record.picture).toMatchObject({ code: 'made', widthPx: HEIGHT, heightPx: WIDTH });
  expect((await sharp(kept!.jpeg!).metadata()).format).toBe('jpeg');

  // Said from the event, because a file of this size is not read to find out.
  const large = arrivalOf(evidenceKey('ef'.repeat(32)));
  await handler({ ...large, detail: { object: { ...large.detail.object, size: 25_000_001 } } });
  expect(await createCopyStore(objects).readRecord('ef'.repeat(32))).toMatchObject({
    picture: { code: 'none', reason: 'too-large' },
  });
  await expect(handler(arrivalOf(evidenceKey('cd'.repeat(32))))).rejects.toThrow('is not there');
});

import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { networkEdition, type NetworkEdition } from '../../../shared/network/edition.ts';
import type { ModelOutline } from '../../../shared/network/outline.ts';
import { firstDifference } from '../../../shared/submissions/canonical.ts';
import { StoreUnavailable } from '../faults.ts';
import type { ObjectStore } from '../objects/objects.ts';
import { ModelDamaged, type CurrentModel, type NetworkModels } from './networkModels.ts';

const compress = promisify(gzip);
const decompress = promisify(gunzip);

/** A file that unpacks to more is not ours: the largest model that is read has 20 MB, its outline not twice that. */
const mostBytes = 64 * 1024 * 1024;
/** Loads that happen at the same moment are few; more lost races than this is something else. */
const mostTries = 20;

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const inpKey = (hash: string): string => `files/${hash}.inp.gz`;
const outlineKey = (hash: string): string => `outlines/${hash}.json.gz`;
const editionKey = (edition: number): string => `editions/${String(edition).padStart(8, '0')}.json`;

/**
 * Network models over any object store: files by their hash, and editions as numbered objects, each written once under
 * the condition that its number is free (as decision 0033 has it for inventories). Nothing is overwritten.
 */
export function objectModels(objects: ObjectStore): NetworkModels {
  let latest: CurrentModel | null = null;

  async function keep(key: string, bytes: Uint8Array): Promise<void> {
    await objects.put(key, await compress(bytes), { contentType: 'application/gzip', ifAbsent: true });
  }

  async function read(key: string, hash: string): Promise<Uint8Array> {
    const found = await objects.get(key);
    if (!found) throw new ModelDamaged(`${key} is missing`);
    const bytes = await decompress(found.bytes, { maxOutputLength: mostBytes }).catch((cause: unknown) => {
      throw new ModelDamaged(`${key} cannot be unpacked`, { cause });
    });
    if (sha256(bytes) !== hash) throw new ModelDamaged(`${key} was changed`);
    return bytes;
  }

  async function lastKey(): Promise<string | undefined> {
    return (await objects.list('editions/')).at(-1);
  }

  async function readEdition(key: string): Promise<NetworkEdition> {
    const found = await objects.get(key);
    if (!found) throw new ModelDamaged(`${key} was listed and is not there`);
    return networkEdition.parse(JSON.parse(Buffer.from(found.bytes).toString('utf8')));
  }

  return {
    current: async () => {
      const key = await lastKey();
      if (key === undefined) return null;
      if (latest && editionKey(latest.edition) === key) return latest;
      const edition = await readEdition(key);
      const [inp, outline] = await Promise.all([
        read(inpKey(edition.inpSha256), edition.inpSha256),
        read(outlineKey(edition.outlineSha256), edition.outlineSha256),
      ]);
      latest = {
        ...edition,
        inp,
        outline: JSON.parse(Buffer.from(outline).toString('utf8')) as ModelOutline,
      };
      return latest;
    },
    publish: async (inp, outline, meta) => {
      const outlineBytes = Buffer.from(JSON.stringify(outline));
      const hashes = { inpSha256: sha256(inp), outlineSha256: sha256(outlineBytes) };
      await keep(inpKey(hashes.inpSha256), inp);
      await keep(outlineKey(hashes.outlineSha256), outlineBytes);
      for (let tried = 0; tried < mostTries; tried += 1) {
        const last = await lastKey();
        const before = last === undefined ? null : await readEdition(last);
        const number = (before?.edition ?? 0) + 1;
        const edition = networkEdition.parse({ schemaVersion: 1, edition: number, ...hashes, meta });
        // Our own write of before, whose answer was lost.
        if (before && firstDifference({ ...before, edition: number }, edition) === null) return before;
        // Last, and in one step: until here nothing points to the new files.
        const { written } = await objects.put(
          editionKey(edition.edition),
          Buffer.from(`${JSON.stringify(edition)}\n`),
          { contentType: 'application/json', ifAbsent: true },
        );
        if (written) return edition;
      }
      throw new StoreUnavailable(`others loaded network models ${mostTries} times at the same moment`);
    },
  };
}

import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { gunzip, gzip } from 'node:zlib';
import { layerEdition, type LayerEdition, type LayerKind } from '../../../shared/layers/kinds.ts';
import { firstDifference } from '../../../shared/submissions/canonical.ts';
import { StoreUnavailable } from '../faults.ts';
import type { ObjectStore } from '../objects/objects.ts';
import { LayerDamaged, type CurrentLayer, type LayerStore } from './layers.ts';

const compress = promisify(gzip);
const decompress = promisify(gunzip);

/** Ten million positions of streets take 80 MB; a file that unpacks to more is not ours. */
const mostBytes = 256 * 1024 * 1024;
/** Loads that happen at the same moment are few; more lost races than this is something else. */
const mostTries = 20;

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const fileKey = (kind: LayerKind, hash: string): string => `${kind}/files/${hash}.gz`;
const editionKey = (kind: LayerKind, edition: number): string =>
  `${kind}/editions/${String(edition).padStart(8, '0')}.json`;

/**
 * Layers over any object store: files by their hash, and editions as numbered objects, each written once under the
 * condition that its number is free (as decision 0033 has it for inventories). Nothing is overwritten.
 */
export function objectLayers(objects: ObjectStore): LayerStore {
  const latest = new Map<LayerKind, CurrentLayer>();

  const lastKey = async (kind: LayerKind): Promise<string | undefined> =>
    (await objects.list(`${kind}/editions/`)).at(-1);

  async function readEdition(key: string): Promise<LayerEdition> {
    const found = await objects.get(key);
    if (!found) throw new LayerDamaged(`${key} was listed and is not there`);
    return layerEdition.parse(JSON.parse(Buffer.from(found.bytes).toString('utf8')));
  }

  async function readFile(key: string, hash: string): Promise<Uint8Array> {
    const found = await objects.get(key);
    if (!found) throw new LayerDamaged(`${key} is missing`);
    const bytes = await decompress(found.bytes, { maxOutputLength: mostBytes }).catch((cause: unknown) => {
      throw new LayerDamaged(`${key} cannot be unpacked`, { cause });
    });
    if (sha256(bytes) !== hash) throw new LayerDamaged(`${key} was changed`);
    return bytes;
  }

  return {
    current: async (kind) => {
      const key = await lastKey(kind);
      if (key === undefined) return null;
      const known = latest.get(kind);
      if (known && editionKey(kind, known.edition) === key) return known;
      const edition = await readEdition(key);
      if (edition.data === null) return null;
      const { sha256: hash } = edition.data;
      const current = { ...edition, bytes: await readFile(fileKey(kind, hash), hash) };
      latest.set(kind, current);
      return current;
    },
    publish: async (kind, { loadedAt, loadedBy, data }) => {
      const hash = data && sha256(data.bytes);
      if (data && hash !== null)
        await objects.put(fileKey(kind, hash), await compress(data.bytes), {
          contentType: 'application/gzip',
          ifAbsent: true,
        });
      for (let tried = 0; tried < mostTries; tried += 1) {
        const last = await lastKey(kind);
        const before = last === undefined ? null : await readEdition(last);
        const edition = layerEdition.parse({
          schemaVersion: 1,
          edition: (before?.edition ?? 0) + 1,
          kind,
          loadedAt,
          loadedBy,
          data: data && { sha256: hash, source: data.source },
        });
        // Our own write of before, whose answer was lost.
        if (before && firstDifference({ ...before, edition: edition.edition }, edition) === null)
          return before;
        // Last, and in one step: until here nothing points to the new file.
        const { written } = await objects.put(
          editionKey(kind, edition.edition),
          Buffer.from(`${JSON.stringify(edition)}\n`),
          { contentType: 'application/json', ifAbsent: true },
        );
        if (written) return edition;
      }
      throw new StoreUnavailable(`others loaded ${kind} ${mostTries} times at the same moment`);
    },
  };
}

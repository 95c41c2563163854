import {
  cellKey,
  MAP_INDEX_KEY,
  type MapCellFile,
  type MapIndex,
} from '../../../../shared/public/mapIndex.ts';

/** Why a list could not be read: nobody answered, what came is no list, or it is being replaced at this moment. */
export type Unread = 'unreachable' | 'broken' | 'renewed';
export class ListUnread extends Error {
  override readonly name = 'ListUnread';
  readonly why: Unread;
  constructor(why: Unread) {
    super(why);
    this.why = why;
  }
}

const TIMEOUT_MS = 20_000;

/** A published file, asked of this host alone. What it is called says nothing of where the reader stands. */
async function read(key: string, cache: RequestCache): Promise<unknown> {
  let response: Response;
  try {
    response = await fetch(`/${key}`, {
      cache,
      credentials: 'omit',
      signal: AbortSignal.timeout(TIMEOUT_MS),
    });
  } catch {
    throw new ListUnread('unreachable');
  }
  if (!response.ok) throw new ListUnread(response.status >= 500 ? 'unreachable' : 'broken');
  try {
    return await response.json();
  } catch {
    throw new ListUnread('broken');
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;

/** The index as it stands now. @throws ListUnread */
export async function readIndex(): Promise<MapIndex> {
  const found = await read(MAP_INDEX_KEY, 'no-cache');
  if (!isRecord(found) || found['version'] !== 1 || !Array.isArray(found['cells']))
    throw new ListUnread('broken');
  return found as unknown as MapIndex;
}

/** A cell as the index says it is; one that a cache kept from before is asked for again. @throws ListUnread */
export async function readCell({ cell, stamp }: MapIndex['cells'][number]): Promise<MapCellFile> {
  for (const cache of ['default', 'reload'] as const) {
    const found = await read(cellKey(cell), cache);
    if (!isRecord(found) || found['version'] !== 1) throw new ListUnread('broken');
    if (found['stamp'] === stamp) return found as unknown as MapCellFile;
  }
  throw new ListUnread('renewed');
}

import type { Entry } from './database.ts';

type Waiting = Pick<Entry, 'state' | 'submission' | 'draft' | 'author'>;

/** Reports whose kind alone says that a hydrant is out of service. */
export const isOutage = (kind: string): boolean => kind === 'strike' || kind === 'outage';

/**
 * Whether a hydrant is out by what an entry says: until it is recorded, dispatch knows nothing of it. Beside a report that
 * is a hydrant's own valve closed with no strike, which the server counts as out (`shutValves`), and a correction that
 * puts a strike at another hydrant, which dispatch believes to be in service.
 */
export function takesOut({ submission, draft }: Pick<Waiting, 'submission' | 'draft'>): boolean {
  const { kind, body, subject } = submission;
  if (isOutage(kind)) return true;
  if (kind === 'valve-operation')
    return subject.type === 'hydrant' && body['action'] === 'closed' && body['valve'] === 'isolation';
  const before = draft.corrects?.hydrantId;
  if (kind !== 'correction' || body['targetKind'] !== 'strike' || before === undefined) return false;
  const named = (body['replacement'] as { readonly hydrantId?: unknown } | null)?.hydrantId ?? null;
  return named !== null && named !== before;
}

/** What the frame of every screen tells of the entries on this device to whoever holds it (`null`: not signed in). */
export function unsentFor(
  entries: readonly Waiting[],
  personId: string | null,
): { readonly mine: number; readonly outages: number } {
  return {
    mine: entries.filter(({ author }) => personId === null || author.personId === personId).length,
    // Whoever wrote it: a hydrant that nobody was told of is out for the next shift as well.
    outages: entries.filter((entry) => entry.state !== 'recorded' && takesOut(entry)).length,
  };
}

import { setTimeout as wait } from 'node:timers/promises';
import { splitStream } from '../../shared/submissions/envelope.ts';
import { UnreadableFact } from '../stores/faults.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { Mark, Unprojected } from '../stores/unprojected/unprojected.ts';

/** The projector is given this long before a page says that something is missing from it. */
const PATIENCE_MS = 3000;
const LOOK_EVERY_MS = 250;
/** No attempt to hand a fact in lasts as long: a mark this old with no fact in the ledger was left by one that ended. */
const LONGEST_ATTEMPT_MS = 120_000;

export interface UnprojectedDeps {
  readonly ledger: Pick<Ledger, 'readStream'>;
  readonly unprojected: Pick<Unprojected, 'list'>;
  readonly pause?: (milliseconds: number) => Promise<void>;
}

/** A claim is on no public page but as part of a year's sum. */
const isPublic = ({ stream }: Mark): boolean => splitStream(stream).type !== 'claim';

/**
 * When facts were recorded, up to the check, that are not known to be among the projections; empty in the usual case.
 * Waits a little for the projector first. To be asked before the projections are read: a mark is taken away after its
 * fact was projected, so what is not named here is in what is read then.
 */
export async function unprojectedAt(
  { ledger, unprojected, pause = wait }: UnprojectedDeps,
  checkedAt: string,
): Promise<readonly string[]> {
  const waiting = async (): Promise<readonly Mark[]> =>
    (await unprojected.list()).filter(
      (mark) => isPublic(mark) && Date.parse(mark.recordedAt) <= Date.parse(checkedAt),
    );
  let marks = await waiting();
  for (let waited = 0; marks.length > 0 && waited < PATIENCE_MS; waited += LOOK_EVERY_MS) {
    if (!marks.some((mark) => isRecent(mark, checkedAt))) break;
    await pause(LOOK_EVERY_MS);
    marks = await waiting();
  }
  const stands = await Promise.all(
    marks.map(async (mark) => isRecent(mark, checkedAt) || (await isRecorded(ledger, mark))),
  );
  return [
    ...new Map(marks.filter((_, index) => stands[index]).map((mark) => [mark.submissionId, mark])).values(),
  ]
    .map(({ recordedAt }) => recordedAt)
    .toSorted((a, b) => Date.parse(a) - Date.parse(b));
}

const isRecent = ({ recordedAt }: Mark, checkedAt: string): boolean =>
  Date.parse(checkedAt) - Date.parse(recordedAt) < LONGEST_ATTEMPT_MS;

const isRecorded = async (
  ledger: Pick<Ledger, 'readStream'>,
  { stream, submissionId }: Mark,
): Promise<boolean> => {
  try {
    const recorded = await ledger.readStream(stream, { personal: false });
    return recorded.some(({ submission }) => submission.submissionId === submissionId);
  } catch (error) {
    // What cannot be read cannot be projected either; the rest of the page is right.
    if (error instanceof UnreadableFact) return true;
    throw error;
  }
};

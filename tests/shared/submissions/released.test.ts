import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { memoryStores } from '../../../functions/stores/dynamodb/stores.ts';
import { projectionItems } from '../../../shared/projections/items.ts';
import { currentSchemaVersion } from '../../../shared/submissions/envelope.ts';
import { history } from '../../../shared/submissions/history.ts';
import { kinds } from '../../../shared/submissions/kinds.ts';
import {
  parseSubmission,
  streamOfSubmission,
  type Submission,
} from '../../../shared/submissions/submission.ts';

/**
 * Submissions as they were written when they were new: one of each kind and schema version ever released, and one more
 * for each time its fields grew. Released is what stood on the main branch at the end of a round of work (`landed`),
 * because from then on somebody's ledger may hold it. These files are added to and never changed: what was accepted once
 * stays readable, whole (docs/decisions/0239).
 */
const folder = join(import.meta.dirname, '../../fixtures/released/submissions');
interface Released {
  readonly landed: string;
  readonly submission: Submission;
}
const released = readdirSync(folder).flatMap((file) =>
  (JSON.parse(readFileSync(join(folder, file), 'utf8')) as Released[]).map((one) => ({
    file,
    ...one,
    name: `${one.submission.kind} of ${one.landed}`,
  })),
);

describe('what was released', () => {
  it('has one of every kind in the version that is written today', () => {
    const there = released
      .filter(({ submission }) => submission.schemaVersion === currentSchemaVersion)
      .map(({ submission }) => submission.kind);
    expect(kinds.filter((kind) => !there.includes(kind))).toEqual([]);
    for (const { file, submission } of released) expect(file).toBe(`${submission.kind}.json`);
  });

  it.each(released)('$name is read as it was written', ({ submission }) => {
    const parsed = parseSubmission(submission);
    expect(parsed.ok ? [] : parsed.problems).toEqual([]);
    // Defaults may be added to what was left out; nothing that was said may be lost.
    expect(parsed.ok && parsed.value).toMatchObject(submission);
  });

  it.each(released)('$name is kept, read back, folded and told', async ({ submission }) => {
    const { ledger } = memoryStores();
    const delivery = { recordedAt: '2026-09-01T12:00:01.000Z', deliveredBy: null };
    expect(await ledger.accept(submission, delivery)).toMatchObject({ outcome: 'accepted' });
    expect(await ledger.accept(structuredClone(submission), delivery)).toMatchObject({ outcome: 'repeat' });
    const recorded = await ledger.readStream(streamOfSubmission(submission));
    expect(recorded.map((one) => one.submission)).toEqual([submission]);
    const bare = await ledger.readStream(streamOfSubmission(submission), { personal: false });
    projectionItems(bare, () => 'dry-barrel');
    expect(history(recorded)).toHaveLength(1);
  });

  it('is all one ledger, whose parts were written at different times', () => {
    const recorded = released.map(({ submission }) => ({
      submission,
      recordedAt: '2026-09-01T12:00:01.000Z',
      deliveredBy: null,
      erased: false,
    }));
    const items = projectionItems(recorded, () => 'dry-barrel');
    const of = (partition: string) => items.filter((item) => item.partition === partition);
    expect(of('strike').length).toBeGreaterThan(0);
    expect(of('claim')).toHaveLength(1);
    expect(of('hydrant').length).toBeGreaterThan(0);
  });
});

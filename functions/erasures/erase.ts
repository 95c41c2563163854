import { erasableOf, holdsOn, type Erasable } from '../../shared/erasure/erasable.ts';
import { project } from '../../shared/projections/project.ts';
import { currentSchemaVersion, subjectOf, type Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { streamOfSubmission, type BodyOf } from '../../shared/submissions/submission.ts';
import type { Erasures, RecordedErasure } from '../stores/erasures/erasures.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import { append, type AppendDeps } from '../submissions/append.ts';

export interface EraseDeps extends Omit<AppendDeps, 'now'> {
  readonly erasures: Erasures;
}

/** What there is to erase in a stream, and the claims under a legal hold that forbid it. */
export async function lookAt(
  { ledger }: { readonly ledger: Ledger },
  stream: Stream,
): Promise<{ readonly erasable: readonly Erasable[]; readonly holds: readonly string[] }> {
  const erasable = erasableOf(await ledger.readStream(stream));
  // The ledger itself and not what is kept for reading: a hold that was set a moment ago holds.
  const recorded: Recorded[] = [];
  for await (const page of ledger.readAll({ personal: false })) recorded.push(...page);
  return {
    erasable,
    holds: holdsOn(
      stream,
      project(recorded, () => 'unknown'),
    ),
  };
}

/**
 * Erases personal fields, and says so for good. The list comes first, then the fact, then the fields go: a process that
 * ends in between leaves an erasure that `eraseAgain` completes, never one that nobody was told of.
 */
export async function erase(
  deps: EraseDeps,
  {
    stream,
    body,
    submissionId,
    at,
    personId,
  }: {
    readonly stream: Stream;
    readonly body: BodyOf<'erasure'>;
    readonly submissionId: string;
    readonly at: string;
    readonly personId: string;
  },
): Promise<void> {
  const erasure: RecordedErasure = {
    submission: {
      schemaVersion: currentSchemaVersion,
      submissionId,
      kind: 'erasure',
      subject: subjectOf(stream),
      occurredAt: at,
      sentAt: at,
      person: { personId },
      device: { deviceId: 'erase' },
      enteredUnits: 'us',
      body,
    },
    recordedAt: at,
    deliveredBy: null,
    erased: false,
  };
  await deps.erasures.add(erasure);
  await complete(deps, erasure);
}

/** Every erasure of the list anew: what a restore brought back goes, and its fact stands. Answers how many there are. */
export async function eraseAgain(deps: EraseDeps): Promise<number> {
  const listed = await deps.erasures.list();
  for (const erasure of listed) await complete(deps, erasure);
  return listed.length;
}

async function complete(deps: EraseDeps, { submission, recordedAt }: RecordedErasure): Promise<void> {
  const { personId } = submission.person;
  await append({ ...deps, now: () => new Date(recordedAt) }, submission, {
    personId,
    name: personId,
    roles: ['manager'],
  });
  for (const targetId of submission.body.targetIds)
    await deps.ledger.forget(streamOfSubmission(submission), targetId);
}

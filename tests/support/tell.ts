import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import type { HydrantStatus } from '../../shared/outages/hydrantStatus.ts';
import { proofsAfterRepair, type Proof } from '../../shared/outages/proofs.ts';
import { project, type Projections } from '../../shared/projections/project.ts';
import type { ProcedureStep } from '../../shared/procedure/steps.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import type { BodyOf, Fact, Submission } from '../../shared/submissions/submission.ts';
import { at, fact, onHydrant, onStrike, recorded, uuid } from './submissions.ts';

/** Short words for given / when / then tables. Times are minutes of one night; hydrant A unless said otherwise. */

let made = 10_000;
/** A new submission's number: ids only have to differ. */
const next = (): number => (made += 1);

/** Strike number `n` is reported; its strike id is `uuid(n)`. */
export function struck(n: number, minute: number, hydrantId: string | null = 'A'): Fact<'strike'> {
  const when = at(minute);
  return fact(
    'strike',
    next(),
    onStrike(n),
    {
      hydrantId,
      struckAt: when,
      struckAtBasis: 'witnessed',
      reportedBy: { source: 'crew', name: null, phone: null, reportedAt: when },
      arrivedAt: null,
      dispatch: null,
      photos: [],
    },
    { occurredAt: when },
  );
}

export function repaired(
  n: number,
  minute: number | null,
  {
    hydrantId = null,
    steps = [],
  }: { hydrantId?: string | null; steps?: readonly (readonly [ProcedureStep, number])[] } = {},
): Fact<'repair'> {
  const when = minute === null ? null : at(minute);
  return fact(
    'repair',
    next(),
    onStrike(n),
    {
      hydrantId,
      reassembledAt: when,
      completedAt: when,
      steps: steps.map(([step, done]) => ({ step, doneAt: at(done), byWorkerId: 'w-7', note: null })),
    },
    { occurredAt: at(minute ?? 0) },
  );
}

export type Result = 'passed' | 'failed' | 'deferred';
type ProofResult = BodyOf<'return-to-service'>['proofs'][number];
export function shown(proof: Proof, minute: number, result: Result = 'passed'): ProofResult {
  const deferred = result === 'deferred';
  return {
    proof,
    result,
    at: at(minute),
    byWorkerId: 'w-7',
    deferredReason: deferred ? 'No water to spare tonight' : null,
    deferredByWorkerId: deferred ? 'w-9' : null,
  };
}
export const allShown = (minute: number): ProofResult[] =>
  proofsAfterRepair('dry-barrel').map((proof) => shown(proof, minute));

/** A return at `minute` that closes strikes by number, with every proof just before it unless given. */
export function returned(
  closes: readonly number[],
  minute: number,
  {
    on = closes[0],
    proofs: given = allShown(minute - 1),
    reopened = [],
  }: {
    on?: number | string | undefined;
    proofs?: ProofResult[];
    reopened?: readonly (readonly [string, number])[];
  } = {},
): Fact<'return-to-service'> {
  return fact(
    'return-to-service',
    next(),
    typeof on === 'string' ? onHydrant(on) : onStrike(on ?? 1),
    {
      returnedAt: at(minute),
      closes: closes.map(uuid),
      proofs: given,
      valvesReopened: reopened.map(([valveId, when]) => ({ valveId, at: at(when), byWorkerId: 'w-7' })),
    },
    { occurredAt: at(minute) },
  );
}

export function turned(
  valveId: string,
  action: 'closed' | 'reopened',
  minute: number,
  on: number | string = 1,
): Fact<'valve-operation'> {
  return fact(
    'valve-operation',
    next(),
    typeof on === 'string' ? onHydrant(on) : onStrike(on),
    { valveId, action, at: at(minute), waterShut: action === 'closed' ? 'yes' : 'unknown' },
    { occurredAt: at(minute) },
  );
}

/** An outage of another cause; `number` is its submission's and so the outage's id. */
export function out(number: number, minute: number, hydrantId = 'A'): Fact<'outage'> {
  return fact(
    'outage',
    number,
    onHydrant(hydrantId),
    { since: at(minute), dispatch: null },
    { occurredAt: at(minute) },
  );
}

export function linked(n: number, same: number): Fact<'link'> {
  return fact('link', next(), onStrike(n), { sameAsStrikeId: uuid(same) });
}

export interface Told extends Projections {
  readonly strike: (n: number) => StrikeState | undefined;
  readonly hydrant: (hydrantId?: string) => HydrantStatus | undefined;
  /** Outages of hydrant A that are open: strikes by number, others by their submission's number. */
  readonly open: readonly number[];
}

const numberOf = (id: string): number => Number.parseInt(id.slice(-12), 16);

/** What the folds make of what was told, in the order it was told. */
export function told(submissions: readonly Submission[], type: Hydrant['type'] = 'dry-barrel'): Told {
  const projected = project(
    submissions.map((submission) => recorded(submission)),
    () => type,
  );
  const hydrant = (hydrantId = 'A') => projected.hydrants.find((one) => one.hydrantId === hydrantId);
  return {
    ...projected,
    strike: (n) => projected.strikes.find(({ strikeId }) => strikeId === uuid(n)),
    hydrant,
    open: (hydrant()?.open ?? []).map(({ outageId }) => numberOf(outageId)),
  };
}

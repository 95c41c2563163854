import type { ClaimState } from '../claims/state.ts';
import type { ShutMain } from '../shutMain/standing.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { StrikeState } from './state.ts';

/** What a strike's record still lacks. Words: `missing.<code>`. */
export interface Missing {
  readonly code:
    | 'strike-report'
    | 'hydrant'
    | 'dispatch'
    | 'mark'
    | 'water-shut'
    | 'water-quality'
    | 'customers'
    | 'expected-return'
    | 'repair'
    | 'repair-open'
    | 'flow-test'
    | 'return'
    | 'return-held'
    | 'dispatch-back'
    | 'photos'
    | 'photos-awaited'
    | 'party'
    | 'claim'
    | 'packet'
    | 'packet-old'
    | 'demand';
  /** The form that supplies it; null where that is no form (a photo on its way, a packet to freeze). */
  readonly kind: FactKind | null;
}

export interface MissingQuestion {
  readonly strike: StrikeState;
  /** Whether the reader may see parties and claims; who may not is never told that one is missing. */
  readonly desk: boolean;
  /** Claims of this strike, for the desk. */
  readonly claims: readonly ClaimState[];
  /** Ids of what is recorded of the strike and bears on its bill: see `bearsOnBill`. */
  readonly billIds?: readonly string[];
  /** Declared photos that have not arrived. */
  readonly photosAwaited: number;
}

type Check = (question: MissingQuestion) => Missing | null;

const when = (condition: boolean, code: Missing['code'], kind: FactKind | null): Missing | null =>
  condition ? { code, kind } : null;

const isOpen = ({ returnedAt }: StrikeState): boolean => returnedAt === null;

/** A record of before these were asked is not asked of once the strike is over. */
const mainsShut = (strike: StrikeState): readonly ShutMain[] =>
  (strike.shutMain?.closings ?? []).filter(({ asked }) => asked || isOpen(strike));

/** In the order in which they matter: first who may be hurt, then the repair, then the money. */
const checks: readonly Check[] = [
  ({ strike }) => when(isOpen(strike) && strike.dispatchToldAt === null, 'dispatch', 'out-of-service-notice'),
  ({ strike }) =>
    when(isOpen(strike) && strike.markedOutOfServiceAt === null, 'mark', 'out-of-service-notice'),
  ({ strike }) =>
    when(strike.stage === 'reported' && strike.waterShutAt === null, 'water-shut', 'valve-operation'),
  // People may be drinking it.
  ({ strike }) =>
    when(
      mainsShut(strike).some(({ submissionId }) => strike.shutMain?.unanswered.includes(submissionId)),
      'water-quality',
      'water-quality-answer',
    ),
  ({ strike }) =>
    when(
      mainsShut(strike).some(({ customersListed }) => !customersListed),
      'customers',
      'valve-operation',
    ),
  ({ strike }) => when(!strike.reported, 'strike-report', 'strike'),
  ({ strike }) => when(strike.hydrantId === null, 'hydrant', null),
  ({ strike }) =>
    when(
      isOpen(strike) && strike.repairedAt === null && strike.expectedAt === null,
      'expected-return',
      'expected-return',
    ),
  ({ strike }) =>
    when(isOpen(strike) && strike.repairedAt === null && strike.stage !== 'under-repair', 'repair', 'repair'),
  ({ strike }) => when(strike.stage === 'under-repair', 'repair-open', 'repair'),
  ({ strike }) =>
    when(strike.repairedAt !== null && strike.flowTestIds.length === 0, 'flow-test', 'flow-test'),
  ({ strike }) =>
    when(
      isOpen(strike) && strike.repairedAt !== null && strike.returns.length === 0,
      'return',
      'return-to-service',
    ),
  ({ strike }) => when(isOpen(strike) && strike.returns.length > 0, 'return-held', 'return-to-service'),
  // Dispatch goes on sending trucks past a hydrant that it was told is out.
  ({ strike }) =>
    when(
      strike.returnedAt !== null && strike.dispatchToldBackAt === null,
      'dispatch-back',
      'out-of-service-notice',
    ),
  ({ strike }) => when(strike.exhibits.length === 0, 'photos', null),
  ({ photosAwaited }) => when(photosAwaited > 0, 'photos-awaited', null),
  ({ strike, desk }) => when(desk && strike.partyIds.length === 0, 'party', 'party'),
  ({ desk, claims }) => when(desk && claims.length === 0, 'claim', 'claim-opened'),
  ({ desk, claims }) => when(desk && claims.some(({ stage }) => stage === 'open'), 'packet', null),
  ({ desk, claims, billIds = [] }) =>
    when(
      desk && claims.some((claim) => claim.stage === 'frozen' && isOld(claim, billIds)),
      'packet-old',
      null,
    ),
  ({ desk, claims, billIds = [] }) =>
    when(
      desk && claims.some((claim) => claim.stage === 'frozen' && !isOld(claim, billIds)),
      'demand',
      'demand-sent',
    ),
];

const billKinds: readonly string[] = [
  'strike',
  'repair',
  'flow-test',
  'water-lost',
  'credit',
  'counter-calculation',
  'week-hours',
  'claim-handling',
];

/** Whether a record of this kind (of a correction: of what it corrects) may change what a strike's statement says. */
export const bearsOnBill = (kind: string): boolean => billKinds.includes(kind);

/** Whether something that bears on the bill was recorded after the claim's last packet was made. */
export function isOld({ packets }: Pick<ClaimState, 'packets'>, billIds: readonly string[]): boolean {
  const last = packets.at(-1);
  if (!last) return false;
  const known = new Set(last.builtFrom);
  return billIds.some((id) => !known.has(id));
}

/** Everything that is still missing, the most pressing first. */
export function missingOf(question: MissingQuestion): Missing[] {
  return checks.flatMap((check) => check(question) ?? []);
}

import { effectOf } from '../clocks/answers.ts';
import { clockNames } from '../clocks/settings.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { ClaimMoney } from '../payments/money.ts';

/**
 * What a clerk should have read before an event of a claim's life is recorded. Cautions, not legal advice, and none
 * refuses anything. Words: `caution.life.<code>`.
 */
export interface LifeCaution {
  readonly code: (typeof lifeCautionCodes)[number];
  readonly params: Readonly<Record<string, number | string>>;
}

export const lifeCautionCodes = [
  'full-payment',
  'full-payment-held',
  'above-balance',
  'refund-above',
  'dispute-above-line',
  'release',
  'offer-in-full',
  'accepting',
  'write-off',
  'write-off-above',
  'let-go',
  'let-go-limitation',
  'answers-nothing',
  'later-day-needed',
  'closing-open',
] as const;

/**
 * `body`: the event as far as it is filled in. `money`: the claim's money before it; null where it is not known, and
 * then a caution that may be needed is given. `lineCents`: what each line of the statement comes to, where that is known.
 * Pure.
 */
export function lifeCautions(
  kind: FactKind,
  body: Readonly<Record<string, unknown>>,
  money: Pick<ClaimMoney, 'askedCents' | 'balanceCents' | 'overpaidCents'> | null,
  lineCents: ReadonlyMap<string, number> = new Map(),
): LifeCaution[] {
  const found: LifeCaution[] = [];
  const add = (code: LifeCaution['code'], params: LifeCaution['params'] = {}): void => {
    found.push({ code, params });
  };
  const cents = typeof body['amountCents'] === 'number' ? body['amountCents'] : null;
  const balanceCents = money?.balanceCents ?? null;
  const above = cents !== null && balanceCents !== null ? cents - balanceCents : 0;
  switch (kind) {
    case 'payment-received':
      // Cashing what is tendered as full payment of a disputed claim may discharge it (UCC 3-311); what pays all that
      // is left settles nothing that was open.
      if (
        body['marked'] === 'full' &&
        body['deposited'] !== 'returned' &&
        (cents === null || money === null || cents < money.balanceCents)
      )
        add(body['deposited'] === 'held' ? 'full-payment-held' : 'full-payment');
      if (above > 0 && body['deposited'] !== 'returned') add('above-balance', { overCents: above });
      break;
    case 'refund-paid': {
      const tooMuch = cents !== null && money !== null ? cents - money.overpaidCents : 0;
      if (tooMuch > 0) add('refund-above', { overCents: tooMuch });
      break;
    }
    case 'line-disputed': {
      const over = aboveTheirLines(body, lineCents);
      if (over > 0) add('dispute-above-line', { overCents: over });
      break;
    }
    case 'offer-made':
      if (body['releaseAsked'] === true) add('release');
      if (body['inFull'] === true && above < 0) add('offer-in-full', { shortCents: -above });
      break;
    case 'offer-answered':
      if (body['answer'] === 'accepted') add('accepting');
      break;
    case 'written-off':
      add('write-off');
      if (above > 0) add('write-off-above', { overCents: above });
      break;
    case 'deadline-answered':
      for (const code of deadlineCautions(body)) add(code);
      break;
    case 'claim-closed':
      if (balanceCents !== null && balanceCents > 0) add('closing-open', { balanceCents });
      break;
    default:
      break;
  }
  return found;
}

/** `let-go` is cautioned; so is an answer that leaves the date as it stands, which its author would not expect. */
function deadlineCautions(body: Readonly<Record<string, unknown>>): LifeCaution['code'][] {
  const { deadline, dueOn, until } = body;
  const clock = clockNames.find((name) => typeof deadline === 'string' && deadline.split(':')[0] === name);
  const answer = body['answer'] as Parameters<typeof effectOf>[1] | undefined;
  if (answer === undefined || clock === undefined) return [];
  if (answer === 'let-go') return [clock === 'limitation' ? 'let-go-limitation' : 'let-go'];
  const effect = effectOf(clock, answer);
  if (effect === 'nothing') return ['answers-nothing'];
  const later = typeof until === 'string' && typeof dueOn === 'string' && until > dueOn;
  return effect === 'moves' && !later ? ['later-day-needed'] : [];
}

/** By how much disputed amounts exceed the lines that they are about, whole cents. A line that is not known bounds nothing. */
function aboveTheirLines(
  body: Readonly<Record<string, unknown>>,
  lineCents: ReadonlyMap<string, number>,
): number {
  const lines = Array.isArray(body['lines']) ? (body['lines'] as Readonly<Record<string, unknown>>[]) : [];
  return lines.reduce((sum, { lineId, disputedCents }) => {
    const most = typeof lineId === 'string' ? lineCents.get(lineId) : undefined;
    return most === undefined || typeof disputedCents !== 'number'
      ? sum
      : sum + Math.max(0, disputedCents - most);
  }, 0);
}

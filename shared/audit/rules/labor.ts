import { broughtToMinimum } from '../../costs/callOuts.ts';
import { standingBreaches } from '../../procedure/breaches.ts';
import type { BreachCode } from '../../procedure/holdPoints.ts';
import { rule, when, type AuditCase, type Rule } from '../case.ts';
import {
  at,
  bodies,
  firstWorkMs,
  HOUR_MS,
  median,
  ofSection,
  overlapMs,
  quarterHours,
  sumCents,
  workSpans,
} from '../reading.ts';

/**
 * How many past repairs of the kind make a comparison, and how many times their median draws a question (common
 * practice, no source).
 */
const ENOUGH_PAST = 3;
const OUT_OF_LINE = 1.5;
/** An overlap shorter than this is a clock that differs, and nothing to argue over. */
const OVERLAP_FROM_MS = 60_000;

const crewHours = (audited: AuditCase): number =>
  workSpans(audited).reduce((sum, { fromMs, toMs }) => sum + toMs - fromMs, 0) / HOUR_MS;

const groundCodes: readonly BreachCode[] = ['dug-before-locate', 'entered-before-protected'];

/** Hold points that the record still shows were passed, of these codes; one corrected since is asked of nobody. */
function passedBy({ breaches }: AuditCase['strike'], of: (code: BreachCode) => boolean) {
  const count = standingBreaches(breaches).filter(({ code }) => of(code)).length;
  return when(count > 0, () => ({ atStakeCents: 0, params: { count } }));
}

/** The labour lines of one worker. */
const linesOf = (audited: AuditCase, workerId: string) =>
  ofSection(audited, 'labor').filter(({ item }) => item === workerId);

/** What part of the labour stands on stretches of time, by the share of all hours. */
function shareOfLabor(audited: AuditCase, ms: number): number {
  const hours = crewHours(audited);
  return hours === 0
    ? 0
    : Math.round(sumCents(ofSection(audited, 'labor')) * Math.min(1, ms / HOUR_MS / hours));
}

/** Hours of people, and what the clock says of them. */
export const laborRules: readonly Rule[] = [
  rule('hours-overlap-elsewhere', 'repair', (audited) => {
    const byWorker = new Map<string, { ms: number; of: Set<string> }>();
    for (const span of workSpans(audited))
      for (const other of audited.elsewhere) {
        if (other.workerId !== span.workerId) continue;
        const ms = overlapMs(span, { fromMs: at(other.from), toMs: at(other.to) });
        if (ms < OVERLAP_FROM_MS) continue;
        const known = byWorker.get(span.workerId) ?? { ms: 0, of: new Set() };
        known.ms += ms;
        known.of.add(span.submissionId);
        byWorker.set(span.workerId, known);
      }
    return [...byWorker].map(([workerId, { ms, of }]) => ({
      about: workerId,
      of: [...of],
      atStakeCents: Math.min(sumCents(linesOf(audited, workerId)), shareOfLabor(audited, ms)),
      params: { workerId, hours: quarterHours(ms) },
    }));
  }),
  rule('hours-recorded-twice', 'repair', ({ statement }) =>
    statement.problems
      .filter(({ code }) => code === 'work-claimed-twice' || code === 'machine-claimed-twice')
      .map(({ path, params }, index) => ({
        of: path.split(' '),
        about: String(params['workerId'] ?? params['machineCode'] ?? index),
        // The engine bills the moment once; what is at stake is the trust in the sheet, not the money.
        atStakeCents: 0,
        params: {
          who: String(params['workerId'] ?? params['machineCode'] ?? ''),
          time: String(params['time'] ?? ''),
        },
      })),
  ),
  rule('premium-without-reason', 'repair', (audited) => {
    const reason = bodies(audited.facts, 'repair').some(
      (body) => (body.premiumTimeReason ?? '').trim() !== '',
    );
    // A strike reported outside working hours explains itself only when the call is on record.
    const lines = ofSection(audited, 'labor').filter(({ time }) => Number(time?.multiplier ?? '1') > 1);
    return when(lines.length > 0 && !reason, () => ({
      of: lines.flatMap(({ submissionIds }) => submissionIds),
      atStakeCents: lines.reduce(
        (sum, { amountCents, time }) =>
          sum + Math.round((amountCents ?? 0) * (1 - 1 / Number(time?.multiplier ?? '1'))),
        0,
      ),
      params: { lines: lines.length },
    }));
  }),
  rule('minimum-without-call', 'strike', (audited) => {
    const called = bodies(audited.facts, 'strike').some(({ calledOutAt }) => calledOutAt !== null);
    // Rounding to steps also pays more than was worked, and needs no call.
    return ofSection(audited, 'labor')
      .filter(broughtToMinimum)
      .flatMap(({ lineId, item, quantity, hoursWorked, amountCents }) => {
        const [paid, worked] = [Number(quantity), Number(hoursWorked ?? quantity)];
        return when(paid > worked && !called, () => ({
          about: lineId,
          lineId,
          atStakeCents: Math.round((amountCents ?? 0) * (1 - worked / paid)),
          params: { workerId: item, worked, paid },
        }));
      });
  }),
  rule('crew-out-of-line', 'repair', (audited) => {
    const { pastRepairs } = audited;
    if (pastRepairs.length < ENOUGH_PAST) return [];
    const usual = median(pastRepairs.map(({ laborHours }) => laborHours));
    const now = crewHours(audited);
    return when(usual > 0 && now > usual * OUT_OF_LINE, () => ({
      atStakeCents: Math.round(sumCents(ofSection(audited, 'labor')) * (1 - usual / now)),
      params: {
        hours: Math.round(now * 4) / 4,
        usual: Math.round(usual * 4) / 4,
        repairs: pastRepairs.length,
      },
    }));
  }),
  rule('work-after-return', 'repair', (audited) => {
    const { returnedAt } = audited.strike;
    if (returnedAt === null) return [];
    const after = workSpans(audited).filter(({ toMs }) => toMs > at(returnedAt));
    const ms = after.reduce((sum, { fromMs, toMs }) => sum + toMs - Math.max(fromMs, at(returnedAt)), 0);
    return when(ms >= OVERLAP_FROM_MS, () => ({
      of: after.map(({ submissionId }) => submissionId),
      atStakeCents: shareOfLabor(audited, ms),
      params: { hours: quarterHours(ms), returnedAt },
    }));
  }),
  rule('work-before-strike', 'repair', (audited) => {
    const first = firstWorkMs(audited);
    const since = at(audited.strike.since);
    return when(first !== null && first < since - OVERLAP_FROM_MS, () => ({
      of: workSpans(audited).flatMap(({ fromMs, submissionId }) => (fromMs < since ? [submissionId] : [])),
      atStakeCents: shareOfLabor(audited, since - (first ?? since)),
      params: { since: audited.strike.since },
    }));
  }),
  rule('repair-before-isolation', 'repair', ({ strike }) =>
    passedBy(strike, (code) => !groundCodes.includes(code)),
  ),
  rule('dig-before-locate', 'repair', ({ strike }) => passedBy(strike, (code) => groundCodes.includes(code))),
  rule('no-hours-billed', 'repair', (audited) =>
    when(
      ['labor', 'flat-price', 'contractors'].every((section) => ofSection(audited, section).length === 0) &&
        audited.statement.totalCents > 0,
      () => ({
        atStakeCents: 0,
      }),
    ),
  ),
];

import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { PayRules } from '../../shared/costs/book/labor.ts';
import { cost, span, worked } from '../support/rates.ts';
import { plainRules, ruledRates } from '../support/payRules.ts';

/**
 * The same hours counted by other means: minute by minute, by the clock that the platform's Intl shows for each, with no
 * calendar of ours. Edges that a clock change skips or repeats are left out here; they have tests of their own.
 */
const clocks = new Intl.DateTimeFormat('en-US', {
  timeZone: 'America/Chicago',
  weekday: 'short',
  hour: '2-digit',
  minute: '2-digit',
  hourCycle: 'h23',
});
const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];
const shownAt = (ms: number): { weekday: number; clock: string } => {
  const parts = Object.fromEntries(clocks.formatToParts(ms).map(({ type, value }) => [type, value]));
  return {
    weekday: weekdays.indexOf(parts['weekday'] ?? '') + 1,
    clock: `${parts['hour'] ?? ''}:${parts['minute'] ?? ''}`,
  };
};

/** Minutes by kind of time, and of each call; the third hour of a call and what begins within it are one call. */
function byMinute(minutes: readonly number[], rules: PayRules, hoursBefore: number): Record<string, number> {
  const paid: Record<string, number> = {};
  const add = (key: string, count = 1): void => void (paid[key] = (paid[key] ?? 0) + count);
  const isWorking = (ms: number): boolean => {
    const { weekday, clock } = shownAt(ms);
    return rules.workingHours.some(
      ({ days, from, to }) => days.includes(weekday) && from <= clock && clock < to,
    );
  };
  let straight = hoursBefore * 60;
  let call: { from: number; minutes: number } | null = null;
  let last = -Infinity;
  const minimum = Number(rules.otherHours.minimumHours ?? 0) * 60;
  const close = (): void => {
    if (call && call.minutes < minimum) add('other-hours', minimum - call.minutes);
    call = null;
  };
  for (const ms of minutes) {
    const working = isWorking(ms);
    const joined = ms === last + 60_000 && !isWorking(last);
    last = ms;
    if (!working) {
      add('other-hours');
      if (call !== null && (joined || ms < call.from + minimum * 60_000)) call.minutes += 1;
      else {
        close();
        call = { from: ms, minutes: 1 };
      }
      continue;
    }
    add(straight >= 40 * 60 ? 'week-overtime' : 'working-hours');
    straight += 1;
  }
  close();
  return paid;
}

const starts = ['2026-03-06T06:00:00Z', '2026-03-02T06:00:00Z', '2026-10-30T05:00:00Z'].map((at) =>
  Date.parse(at),
);
const gaps = fc.array(fc.tuple(fc.integer({ min: 1, max: 700 }), fc.integer({ min: 1, max: 500 })), {
  minLength: 1,
  maxLength: 4,
});
const clock = fc.constantFrom('00:00', '07:30', '12:00', '16:00', '23:00', '24:00');

it('hours paid are those that a clock gives, minute by minute', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...starts),
      gaps,
      fc.array(
        fc.record({
          days: fc.uniqueArray(fc.integer({ min: 1, max: 7 }), { minLength: 1, maxLength: 7 }),
          from: clock,
          to: clock,
        }),
        { maxLength: 3 },
      ),
      fc.constantFrom(null, '0.5', '3'),
      fc.constantFrom(0, 31, 39),
      (start, pairs, workingHours, minimumHours, before) => {
        let at = start;
        const minutes: number[] = [];
        const work = pairs.map(([gap, length]) => {
          const from = at + gap * 60_000;
          at = from + length * 60_000;
          for (let ms = from; ms < at; ms += 60_000) minutes.push(ms);
          return span(new Date(from).toISOString(), length);
        });
        const rules: PayRules = {
          ...plainRules,
          workingHours,
          otherHours: { multiplier: '1.5', minimumHours, minimumWhenAdjoining: true },
          // A week that starts on a Sunday is left out of these days, so that one count runs through.
          week: { startsOn: 5, overHours: '40', multiplier: '1.5' },
        };
        const weekStartsOn =
          { [starts[0] ?? 0]: '2026-03-06', [starts[1] ?? 0]: '2026-02-27' }[start] ?? '2026-10-30';
        fc.pre(at < start + 4 * 86_400_000);
        const statement = cost({ crew: [worked('w', 'crew', work)] }, ruledRates(rules), {
          weekHours: [{ workerId: 'w', weekStartsOn, hours: String(before) }],
        });
        const ours = Object.fromEntries(
          statement.lines.map(({ time, quantity }) => [
            time?.as,
            Math.round(Number(quantity) * 60 * 100) / 100,
          ]),
        );
        const expected = byMinute(minutes, rules, before);
        expect(Object.keys(ours).sort()).toEqual(Object.keys(expected).sort());
        for (const [kind, count] of Object.entries(expected)) expect(ours[kind]).toBeCloseTo(count, 1);
      },
    ),
    { numRuns: 150 },
  );
});

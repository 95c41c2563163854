import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLocalTime } from '../../../site/src/app/form/localTime.ts';
import { rowsOf, textOf, type Values } from '../../../site/src/app/form/nodes.ts';
import {
  cut,
  lanesOf,
  moved,
  movedAll,
  moves,
  runningOf,
  runningRows,
  type Move,
} from '../../../site/src/app/form/running.ts';

/** Time taken with one touch. Expected times are worked out by hand from the wall clock; common practice, no source. */
const zone = 'America/New_York';
const crew = lanesOf['crew']!;
const machines = lanesOf['machines']!;
const blankPerson: Values = { workerId: 'w-1', work: [{ from: '', to: '' }], breaks: [] };
/** A wall-clock time in EST (UTC−5). */
const est = (time: string): Date => new Date(`2026-02-10T${time}-05:00`);
const after = (row: Values, lanes: typeof crew, steps: readonly [Move, Date][]): Values =>
  steps.reduce((at, [move, now]) => {
    const result = moved(move, at, lanes, zone, now);
    if (!result.ok) throw new Error(result.why);
    return result.row;
  }, row);

describe('a person', () => {
  test('starts into the blank stretch, takes a break within the work, and stops', () => {
    const done = after(blankPerson, crew, [
      ['start', est('10:42:50')],
      ['aside', est('12:00:10')],
      ['resume', est('12:30:59')],
      ['stop', est('14:05:00')],
    ]);
    expect(done).toEqual({
      workerId: 'w-1',
      work: [{ from: '2026-02-10T10:42', to: '2026-02-10T14:05' }],
      breaks: [{ from: '2026-02-10T12:00', to: '2026-02-10T12:30' }],
    });
    // 3 h 23 min less half an hour.
    expect(runningOf(done, crew, zone, est('18:00:00'))).toEqual({ is: 'idle', since: null, minutes: 173 });
  });

  test('an end that was typed before its start takes no minute off the other stretches', () => {
    const row: Values = {
      ...blankPerson,
      work: [
        { from: '2026-02-10T08:00', to: '2026-02-10T09:00' },
        { from: '2026-02-10T11:00', to: '2026-02-10T10:15' },
      ],
    };
    expect(runningOf(row, crew, zone, est('18:00:00')).minutes).toBe(60);
  });

  test('stops while on a break: both end', () => {
    const done = after(blankPerson, crew, [
      ['start', est('10:00:00')],
      ['aside', est('11:00:00')],
      ['stop', est('11:10:00')],
    ]);
    expect(rowsOf(done['work'])).toEqual([{ from: '2026-02-10T10:00', to: '2026-02-10T11:10' }]);
    expect(rowsOf(done['breaks'])).toEqual([{ from: '2026-02-10T11:00', to: '2026-02-10T11:10' }]);
  });

  test('a second stretch may begin in the minute in which the first ended', () => {
    const done = after(blankPerson, crew, [
      ['start', est('10:00:00')],
      ['stop', est('11:00:20')],
      ['start', est('11:00:40')],
      ['stop', est('11:30:00')],
    ]);
    expect(rowsOf(done['work'])).toEqual([
      { from: '2026-02-10T10:00', to: '2026-02-10T11:00' },
      { from: '2026-02-10T11:00', to: '2026-02-10T11:30' },
    ]);
  });

  test('started and stopped within a minute leaves nothing, and says so', () => {
    const started = after(blankPerson, crew, [['start', est('10:00:01')]]);
    const stopped = moved('stop', started, crew, zone, est('10:00:59'));
    expect(stopped).toEqual({ ok: true, dropped: true, row: { workerId: 'w-1', work: [], breaks: [] } });
  });

  test('a touch that does not apply changes nothing', () => {
    const started = after(blankPerson, crew, [['start', est('10:00:00')]]);
    expect(moved('start', started, crew, zone, est('10:05:00'))).toMatchObject({ ok: true, row: started });
    expect(moved('resume', started, crew, zone, est('10:05:00'))).toMatchObject({ ok: true, row: started });
    expect(moved('aside', blankPerson, crew, zone, est('10:05:00'))).toMatchObject({
      ok: true,
      row: blankPerson,
    });
  });

  test('times typed by hand are kept, and a typed start runs', () => {
    const typed: Values = {
      ...blankPerson,
      work: [
        { from: '2026-02-10T07:00', to: '2026-02-10T08:00' },
        { from: '2026-02-10T09:15', to: '' },
      ],
    };
    expect(runningOf(typed, crew, zone, est('10:00:00'))).toEqual({
      is: 'running',
      since: '2026-02-10T14:15:00.000Z',
      minutes: 105,
    });
    expect(rowsOf(after(typed, crew, [['stop', est('10:00:00')]])['work'])).toEqual([
      { from: '2026-02-10T07:00', to: '2026-02-10T08:00' },
      { from: '2026-02-10T09:15', to: '2026-02-10T10:00' },
    ]);
  });

  test('a start that cannot be read does not run', () => {
    const half: Values = { ...blankPerson, work: [{ from: '?', to: '' }] };
    expect(runningOf(half, crew, zone, est('10:00:00')).is).toBe('idle');
  });
});

describe('a machine', () => {
  const digger: Values = { machineCode: 'EX-1', inUse: [{ from: '', to: '' }], standingBy: [] };
  test('works or stands by, never both', () => {
    const done = after(digger, machines, [
      ['aside', est('09:00:00')],
      ['resume', est('09:30:00')],
      ['aside', est('11:00:00')],
      ['stop', est('11:15:00')],
    ]);
    expect(done).toMatchObject({
      inUse: [{ from: '2026-02-10T09:30', to: '2026-02-10T11:00' }],
      standingBy: [
        { from: '2026-02-10T09:00', to: '2026-02-10T09:30' },
        { from: '2026-02-10T11:00', to: '2026-02-10T11:15' },
      ],
    });
  });
});

describe('clocks', () => {
  test('the hour that comes twice is counted once each: 1:50 EDT to 1:10 EST is twenty minutes', () => {
    // 2026-11-01: clocks in New York go back from 2:00 EDT to 1:00 EST (Energy Policy Act of 2005, section 110).
    const done = after(blankPerson, crew, [
      ['start', new Date('2026-11-01T01:50:00-04:00')],
      ['stop', new Date('2026-11-01T01:10:00-05:00')],
    ]);
    const [stretch] = rowsOf(done['work']);
    const instants = ['from', 'to'].map((end) => readLocalTime(textOf(stretch?.[end]), zone));
    expect(instants).toEqual([
      { ok: true, instant: '2026-11-01T05:50:00.000Z' },
      { ok: true, instant: '2026-11-01T06:10:00.000Z' },
    ]);
    expect(runningOf(done, crew, zone, est('10:00:00')).minutes).toBe(20);
  });

  test('the hour that is skipped is not counted: 1:50 EST to 3:10 EDT is twenty minutes', () => {
    const done = after(blankPerson, crew, [
      ['start', new Date('2026-03-08T01:50:00-05:00')],
      ['stop', new Date('2026-03-08T03:10:00-04:00')],
    ]);
    expect(runningOf(done, crew, zone, new Date('2026-03-08T12:00:00Z')).minutes).toBe(20);
  });

  test('a clock that was set back writes nothing', () => {
    const started = after(blankPerson, crew, [['start', est('10:00:00')]]);
    expect(moved('stop', started, crew, zone, est('09:00:00'))).toEqual({ ok: false, why: 'clock-back' });
    const ended = after(started, crew, [['stop', est('11:00:00')]]);
    // It would lie over the stretch that stands.
    expect(moved('start', ended, crew, zone, est('10:30:00'))).toEqual({ ok: false, why: 'clock-back' });
    expect(movedAll('stop', [blankPerson, started], crew, zone, est('09:00:00'))).toEqual({
      ok: false,
      why: 'clock-back',
    });
  });
});

describe('several at once, and a record in parts', () => {
  const two: Values = {
    note: 'kept',
    crew: [
      blankPerson,
      { ...blankPerson, workerId: 'w-2', work: [{ from: '2026-02-10T07:00', to: '2026-02-10T08:00' }] },
    ],
    machines: [{ machineCode: 'EX-1', inUse: [], standingBy: [{ from: '2026-02-10T09:00', to: '' }] }],
  };
  const started = movedAll('start', rowsOf(two['crew']), crew, zone, est('10:00:00'));

  test('one touch starts everybody who does not run', () => {
    expect(started.ok && started.rows.map((row) => rowsOf(row['work']).at(-1))).toEqual([
      { from: '2026-02-10T10:00', to: '' },
      { from: '2026-02-10T10:00', to: '' },
    ]);
  });

  test('what is done so far ends now, and the same people and machines run on in the next record', () => {
    if (!started.ok) throw new Error(started.why);
    const values = { ...two, crew: started.rows };
    expect(runningRows(values, zone, est('12:00:00'))).toHaveLength(3);
    const result = cut(values, zone, est('12:00:30'));
    if (!result.ok) throw new Error(result.why);
    expect(result.done).toMatchObject({
      note: 'kept',
      crew: [
        { workerId: 'w-1', work: [{ from: '2026-02-10T10:00', to: '2026-02-10T12:00' }] },
        { workerId: 'w-2', work: [{}, { from: '2026-02-10T10:00', to: '2026-02-10T12:00' }] },
      ],
      machines: [{ standingBy: [{ from: '2026-02-10T09:00', to: '2026-02-10T12:00' }], inUse: [] }],
    });
    expect(result.next).toEqual({
      crew: [
        { workerId: 'w-1', work: [{ from: '2026-02-10T12:00', to: '' }], breaks: [] },
        { workerId: 'w-2', work: [{ from: '2026-02-10T12:00', to: '' }], breaks: [] },
      ],
      machines: [{ machineCode: 'EX-1', inUse: [], standingBy: [{ from: '2026-02-10T12:00', to: '' }] }],
    });
  });

  test('who is on a break stays on it, and who began this minute is in the next record alone', () => {
    const rows = [
      after(blankPerson, crew, [
        ['start', est('10:00:00')],
        ['aside', est('11:50:00')],
      ]),
      after({ ...blankPerson, workerId: 'w-2' }, crew, [['start', est('12:00:00')]]),
    ];
    const result = cut({ crew: rows }, zone, est('12:00:30'));
    if (!result.ok) throw new Error(result.why);
    expect(rowsOf(result.done['crew']).map((row) => row['workerId'])).toEqual(['w-1']);
    expect(rowsOf(result.next['crew'])[0]).toMatchObject({
      work: [{ from: '2026-02-10T12:00', to: '' }],
      breaks: [{ from: '2026-02-10T12:00', to: '' }],
    });
    expect(rowsOf(result.next['crew']).map((row) => row['workerId'])).toEqual(['w-1', 'w-2']);
  });
});

test('whatever is touched in whatever order, stretches never overlap, breaks lie within work, and only one thing runs', () => {
  const touches = fc.array(
    fc.record({ move: fc.constantFrom(...moves), seconds: fc.integer({ min: 0, max: 7200 }) }),
    { maxLength: 25 },
  );
  fc.assert(
    fc.property(touches, fc.constantFrom(crew, machines), (steps, lanes) => {
      let row: Values = { [lanes.main]: [{ from: '', to: '' }], [lanes.aside]: [] };
      // Through the night on which an hour comes twice.
      let now = Date.parse('2026-11-01T03:00:00Z');
      for (const { move, seconds } of steps) {
        now += seconds * 1000;
        const result = moved(move, row, lanes, zone, new Date(now));
        expect(result.ok).toBe(true);
        if (result.ok) row = result.row;
      }
      const ended = moved('stop', row, lanes, zone, new Date(now));
      if (ended.ok) row = ended.row;
      const instants = (lane: string): [number, number][] =>
        rowsOf(row[lane])
          .filter((each) => textOf(each['from']) !== '')
          .map((each) => {
            const [from, to] = ['from', 'to'].map((end) => readLocalTime(textOf(each[end]), zone));
            if (!from?.ok || !to?.ok) throw new Error(`cannot be read: ${JSON.stringify(each)}`);
            return [Date.parse(from.instant), Date.parse(to.instant)];
          });
      const main = instants(lanes.main);
      const aside = instants(lanes.aside);
      for (const lane of lanes.within ? [main, aside] : [[...main, ...aside].sort((a, b) => a[0] - b[0])])
        lane.forEach(([from, to], index) => {
          expect(to).toBeGreaterThan(from);
          expect(from).toBeGreaterThanOrEqual(lane[index - 1]?.[1] ?? -Infinity);
        });
      if (lanes.within)
        for (const [from, to] of aside) expect(main.some(([a, b]) => from >= a && to <= b)).toBe(true);
    }),
    { numRuns: 400 },
  );
});

import { describe, expect, it } from 'vitest';
import { rateBookEdition } from '../../shared/costs/rateBook.ts';
import { readSchedule } from '../../shared/costs/schedule/readSchedule.ts';
import { machineFromRow } from '../../shared/costs/schedule/scheduleRow.ts';
import { sayProblem } from '../../shared/words/index.ts';
import { noRates } from '../support/rates.ts';

/** Invented rows with the quirks of schedules as published: codes, names, sizes and rates are nobody's. */
const heading = 'cost_code,equipment,capacity_or_size,hp,notes,unit_as_printed,rate_usd';
const schedule = (...rows: readonly string[]): ReturnType<typeof readSchedule> =>
  readSchedule([heading, ...rows].join('\n'));
const found = (...rows: readonly string[]): Record<string, string[]> =>
  Object.fromEntries(
    schedule(...rows).rows.map(({ code, state, reasons }) => [
      code,
      [state, ...reasons.map((reason) => reason.code)],
    ]),
  );

describe('a published equipment schedule', () => {
  it('is read with its decimal codes, quoted names, units of every spelling and thousands commas', () => {
    const { rows, counts, problems } = schedule(
      '101,"Pump, Trash",3 In,to 5,"Hoses, couplings not included",hour,13.06',
      '101.1,"Pump, Trash",4 In,to15,,Hour,27.38',
      '150,Car,,,,Mile,0.70',
      '160,"Crane, Truck","19,000 LBS",to 240,,hr.,"1,048.09"',
      '170,Light Plant,,,,per day,$88',
    );
    expect(problems).toEqual([]);
    expect(counts).toEqual({ clean: 5, doubtful: 0, rejected: 0 });
    expect(
      rows.map(({ line, code, equipment, unit, rateUsd }) => [line, code, equipment, unit, rateUsd]),
    ).toEqual([
      [2, '101', 'Pump, Trash', 'hour', '13.06'],
      [3, '101.1', 'Pump, Trash', 'hour', '27.38'],
      [4, '150', 'Car', 'mile', '0.70'],
      [5, '160', 'Crane, Truck', 'hour', '1048.09'],
      [6, '170', 'Light Plant', 'day', '88'],
    ]);
  });

  it('does not guess: what is missing or can be read in two ways is given back with its reason', () => {
    expect(
      found(
        '101,Pump,,,,,13.06',
        '102,Pump small,,,,acre,13.06',
        '103,Pump large,,,,hour,"13,06"',
        '104,Pump old,,,,hour,',
        '105,,,,,hour,5.00',
        '106,Pump free,,,,hour,0.00',
      ),
    ).toEqual({
      101: ['rejected', 'schedule-unit-blank'],
      102: ['rejected', 'schedule-unit-unknown'],
      103: ['rejected', 'schedule-rate-unreadable'],
      104: ['rejected', 'schedule-rate-unreadable'],
      105: ['rejected', 'schedule-name-missing'],
      106: ['rejected', 'schedule-rate-zero'],
    });
    expect(schedule(',Pump,,,,hour,5.00').rows[0]).toMatchObject({ state: 'rejected' });
  });

  it('doubts a code that stands twice', () => {
    const { rows } = schedule('101,Pump,,,,hour,13.06', '102,Saw,,,,hour,5', '101,Mixer,,,,hour,2');
    expect(rows.map(({ state }) => state)).toEqual(['doubtful', 'clean', 'doubtful']);
    expect(rows[2]?.reasons).toEqual([
      { code: 'schedule-code-twice', path: 'code', params: { code: '101', lines: '2, 4' } },
    ]);
  });

  it('doubts a bigger machine that costs less, by power or by capacity, and only within one name and unit', () => {
    expect(
      found(
        '201,Compressor,,to 50,,hour,27.71',
        '202,Compressor,,to 90,,hour,26.29',
        '203,Compressor,,to 145,,hour,58.41',
        '211,Truck,7-CY,,,hour,80',
        '212,Truck,12-CY,,,hour,75',
        '213,Truck,,,,Mile,0.70',
      ),
    ).toEqual({
      201: ['clean'],
      202: ['doubtful', 'schedule-bigger-cheaper'],
      203: ['clean'],
      211: ['clean'],
      212: ['doubtful', 'schedule-bigger-cheaper'],
      213: ['clean'],
    });
  });

  it('does not set sizes in different measures beside each other', () => {
    expect(found('221,Loader,14 FT,,,hour,110', '222,Loader,17 LBS,,,hour,50')).toEqual({
      221: ['clean'],
      222: ['clean'],
    });
  });

  it('doubts machines that nothing tells apart and whose rates differ', () => {
    expect(
      found(
        '301,Pickup,,360,,hour,27.82',
        '302,Pickup,,360,,hour,34.02',
        '303,Van,,,,hour,9',
        '304,Van,,,,hour,9.00',
      ),
    ).toEqual({
      301: ['doubtful', 'schedule-same-machine-other-rate'],
      302: ['doubtful', 'schedule-same-machine-other-rate'],
      303: ['clean'],
      304: ['clean'],
    });
  });

  it('doubts a rate far from the others of its name', () => {
    expect(
      found('401,Roller,,10,,hour,1.80', '402,Roller,,30,,hour,20.23', '403,Roller,,50,,hour,27.71'),
    ).toMatchObject({ 401: ['doubtful', 'schedule-rate-far'], 402: ['clean'], 403: ['clean'] });
  });

  it('finds its columns in any order, under other names, below a title and behind a byte-order mark', () => {
    const { rows, problems } = readSchedule(
      '\uFEFFSchedule of 2031\r\n\r\nRate,Unit,Equipment,Code\r\n12.5,hour,Saw,9001\r\n',
    );
    expect(problems).toEqual([]);
    expect(rows).toMatchObject([{ line: 4, code: '9001', rateUsd: '12.5', size: '', state: 'clean' }]);
  });

  it('says which column is missing, and that a file is empty', () => {
    expect(readSchedule('code,equipment,unit\n1,Saw,hour\n').problems.map(({ path }) => path)).toEqual([
      'rate',
    ]);
    expect(readSchedule('').problems).toHaveLength(4);
    expect(schedule().problems.map(({ code }) => code)).toEqual(['schedule-without-rows']);
    expect(
      readSchedule([heading, ...Array<string>(5001).fill('1,Saw,,,,hour,1')].join('\n')).problems,
    ).toMatchObject([{ code: 'schedule-too-long' }]);
  });

  it('says every reason in both languages', () => {
    const { rows } = schedule(
      '101,Pump,,,,,13.06',
      '101,Pump,,,,acre,x',
      ',,,,,hour,0',
      '201,A,,5,,hour,9',
      '202,A,,9,,hour,8',
      '203,A,,9,,hour,80',
    );
    const reasons = rows.flatMap((row) => row.reasons);
    expect(new Set(reasons.map(({ code }) => code)).size).toBeGreaterThan(6);
    for (const reason of reasons)
      for (const locale of ['en', 'es'] as const) expect(sayProblem(locale, reason)).toMatch(/^[^[{]+\.$/);
  });
});

describe('the machine rate of a row', () => {
  // What such schedules hold and do not hold: 44 CFR 206.228(a)(1) and the heading of the FEMA schedule (seen).
  it('holds fuel and overhead, not the operator, and names its code in the schedule', () => {
    const [row] = schedule('101.1,"Pump, Trash",4 In,to15,,Hour,27.38').rows;
    expect(machineFromRow(row!, 'schedule')).toEqual({
      machineCode: '101.1',
      title: 'Pump, Trash, 4 In, to15 HP',
      unit: 'hour',
      rateUsd: '27.38',
      standbyUsd: null,
      schedule: { code: '101.1', size: '4 In, to15 HP' },
      includes: ['fuel', 'overhead'],
      authorityId: 'schedule',
    });
  });

  it('fits the rate book, whatever row it came from', () => {
    const { rows } = schedule('1,Saw,,N/A,,hour,.5', '2,Car,,,,mile,"1,000.1234"', '3,Van,,,,day,40');
    const machines = rows.map((row) => machineFromRow(row, 'a')!);
    expect(machines.map(({ rateUsd, title }) => [rateUsd, title])).toEqual([
      ['0.5', 'Saw'],
      ['1000.1234', 'Car'],
      ['40', 'Van'],
    ]);
    expect(rateBookEdition.safeParse({ ...noRates, machines }).error).toBeUndefined();
  });

  it('is none for a row that is rejected', () => {
    expect(machineFromRow(schedule('101,Pump,,,,,13').rows[0]!, 'a')).toBeNull();
  });
});

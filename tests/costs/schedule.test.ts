import { describe, expect, it } from 'vitest';
import { MOST_ROWS, readSchedule, type Schedule } from '../../shared/costs/schedule/readSchedule.ts';
import { machineFromRow, type ScheduleRow } from '../../shared/costs/schedule/scheduleRow.ts';

/**
 * A published equipment schedule with the quirks that such files have. Rows are invented; that the quirks occur is read
 * from schedules as published (decimal codes, units in two spellings or blank, thousands commas, "to 30" horsepower,
 * names with commas, a bigger machine cheaper than a smaller one). What counts as clean, doubtful or rejected: common
 * practice, no source. Fuel and overhead in the rate, the operator not: 44 CFR 206.228(a)(1).
 */
const headings = 'cost_code,equipment,capacity_or_size,hp,notes,unit_as_printed,rate_usd';
const read = (...rows: string[]): Schedule => readSchedule([headings, ...rows].join('\r\n'));
const one = (row: string): ScheduleRow => read(row).rows[0]!;
const codes = ({ reasons }: ScheduleRow): string[] => reasons.map(({ code }) => code);

describe('a row of a published schedule', () => {
  it('keeps the decimals of its code: 8701.1 is not 8701', () => {
    const { rows } = read('8701,Truck,1 ton,,,hour,20.00', '8701.1,Truck,2 ton,,,hour,30.00');
    expect(rows.map(({ code }) => code)).toEqual(['8701', '8701.1']);
    expect(rows.map(({ state }) => state)).toEqual(['clean', 'clean']);
  });

  it.each([
    ['hour', 'hour'],
    ['Hour', 'hour'],
    ['HOURS', 'hour'],
    ['hrs.', 'hour'],
    ['mile', 'mile'],
    ['Mile', 'mile'],
    ['Day', 'day'],
  ])('reads the unit "%s" as %s', (printed, unit) => {
    expect(one(`9000,Truck,,,,${printed},1.00`)).toMatchObject({ unit, state: 'clean' });
  });

  it('guesses no unit: a blank and a week are rejected, each with its reason', () => {
    const blank = one('9000,Truck,,,,,1.00');
    expect(blank).toMatchObject({ unit: null, state: 'rejected' });
    expect(codes(blank)).toEqual(['schedule-unit-blank']);
    const week = one('9000,Truck,,,,week,1.00');
    expect(week.reasons).toEqual([{ code: 'schedule-unit-unknown', path: 'unit', params: { unit: 'week' } }]);
    expect(machineFromRow(blank, 'sched')).toBeNull();
  });

  it.each([
    ['"1,234.50"', '1234.50'],
    ['"$1,234.50"', '1234.50'],
    ['$ 12.5', '12.5'],
    ['.55', '0.55'],
  ])('reads the rate %s as %s dollars', (printed, rateUsd) => {
    expect(one(`9000,Crane,,,,hour,${printed}`)).toMatchObject({ rateUsd, state: 'clean' });
  });

  it.each(['"12,34"', '"1.234,50"', 'ask', '', '-4.00', '1e3'])('rejects the rate %s', (printed) => {
    const row = one(`9000,Crane,,,,hour,${printed}`);
    expect(row).toMatchObject({ rateUsd: null, state: 'rejected' });
    expect(codes(row)).toEqual(['schedule-rate-unreadable']);
  });

  it('rejects what has no code, no name or costs nothing', () => {
    expect(codes(one(',Crane,,,,hour,5'))).toEqual(['schedule-code-missing']);
    expect(codes(one('9000,,,,,hour,5'))).toEqual(['schedule-name-missing']);
    expect(codes(one('9000,Crane,,,,hour,0.00'))).toEqual(['schedule-rate-zero']);
  });

  it('has a name with commas whole, and its line in the file', () => {
    const { rows } = read(
      '9000,Crane,,,,hour,5',
      '9001,"Board, Arrow, ""Big""",8 ft,to 30,On trailer.,hour,6',
    );
    expect(rows[1]).toMatchObject({ equipment: 'Board, Arrow, "Big"', hp: 'to 30', line: 3 });
    expect(machineFromRow(rows[1]!, 'sched')).toEqual({
      machineCode: '9001',
      title: 'Board, Arrow, "Big", 8 ft, to 30 HP',
      unit: 'hour',
      rateUsd: '6',
      standbyUsd: null,
      schedule: { code: '9001', size: '8 ft, to 30 HP' },
      includes: ['fuel', 'overhead'],
      authorityId: 'sched',
    });
  });
});

describe('rows beside each other', () => {
  it('a bigger machine cheaper than a smaller one is doubtful, by "to 30" horsepower; it can still be taken', () => {
    const { rows, counts } = read(
      '9010,Compressor,130 CFM,to 30,,hour,27.71',
      '9011,Compressor,175 CFM,to 90,,hour,26.29',
      '9012,Compressor,400 CFM,to 145,,hour,58.41',
    );
    expect(rows.map(({ state }) => state)).toEqual(['clean', 'doubtful', 'clean']);
    expect(rows[1]!.reasons).toEqual([
      {
        code: 'schedule-bigger-cheaper',
        path: 'rate',
        params: { code: '9010', rate: '27.71', own: '26.29' },
      },
    ]);
    expect(counts).toEqual({ clean: 2, doubtful: 1, rejected: 0 });
    expect(machineFromRow(rows[1]!, 'sched')?.rateUsd).toBe('26.29');
  });

  it('machines by the mile are not set beside those by the hour, nor feet beside pounds', () => {
    const { counts } = read(
      '9020,Pickup,2 ton,,,hour,20.00',
      '9021,Pickup,3 ton,,,mile,0.70',
      '9030,Hammer,14 ft,,,hour,9.00',
      '9031,Hammer,103 lbs,,,hour,2.00',
    );
    expect(counts).toEqual({ clean: 4, doubtful: 0, rejected: 0 });
  });

  it('a code that stands twice is doubtful in both places, with their lines', () => {
    const { rows } = read('9040a,Pump,,,,hour,5', '9041,Roller,,,,hour,6', '9040A,Saw,,,,hour,7');
    expect(rows.map(({ state }) => state)).toEqual(['doubtful', 'clean', 'doubtful']);
    expect(rows[0]!.reasons).toMatchObject([{ code: 'schedule-code-twice', params: { lines: '2, 4' } }]);
  });

  it('machines that nothing tells apart at two rates are doubtful', () => {
    const { rows } = read('9050,Mixer,9 cf,to 11,,hour,5', '9051,Mixer,9 cf,to 11,,hour,7');
    expect(rows.map(codes)).toEqual([
      ['schedule-same-machine-other-rate'],
      ['schedule-same-machine-other-rate'],
    ]);
  });

  it('a rate ten times the others of its name is doubtful', () => {
    const { rows } = read('9060,Saw,,,a,hour,5', '9061,Saw,,,b,hour,5', '9062,Saw,,,c,hour,50');
    expect(codes(rows[2]!)).toContain('schedule-rate-far');
    expect(codes(rows[0]!)).not.toContain('schedule-rate-far');
  });

  it('a rejected row stays rejected whatever else is odd about it', () => {
    const { rows, counts } = read('9070,Pump,,,,,5', '9070,Pump,,,,hour,5');
    expect(rows.map(({ state }) => state)).toEqual(['rejected', 'doubtful']);
    expect(counts).toEqual({ clean: 0, doubtful: 1, rejected: 1 });
  });
});

describe('a file', () => {
  it('may have a byte-order mark, lines above its headings, other headings in another order, and blank lines', () => {
    const { rows, problems } = readSchedule(
      '\uFEFFSchedule of rates\n\n2031 Rates,Unit,Equipment Description,Code\n"1,000.00",Hour,"Truck, dump",D-1\n\n',
    );
    expect(problems).toEqual([]);
    expect(rows).toMatchObject([
      { line: 4, code: 'D-1', equipment: 'Truck, dump', unit: 'hour', rateUsd: '1000.00', state: 'clean' },
    ]);
  });

  it('without a needed column says which, and reads nothing', () => {
    const { rows, problems } = readSchedule('code,equipment,rate\n1,Truck,5');
    expect(rows).toEqual([]);
    expect(problems).toMatchObject([{ code: 'schedule-column-missing', path: 'unit' }]);
    expect(readSchedule('').problems.map(({ path }) => path)).toEqual(['code', 'equipment', 'unit', 'rate']);
  });

  it('without rows, or with too many, says so', () => {
    expect(read().problems).toMatchObject([{ code: 'schedule-without-rows' }]);
    const many = read(...Array.from({ length: MOST_ROWS + 1 }, (_, at) => `${at},Truck,,,,hour,5`));
    expect(many.rows).toEqual([]);
    expect(many.problems).toMatchObject([{ code: 'schedule-too-long', params: { most: MOST_ROWS } }]);
  });
});

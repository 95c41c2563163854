import type { RateBookEdition } from '../../../../../shared/costs/rateBook.ts';
import { decode } from '../decode.ts';
import { rowsOf, type Node, type Value, type Values } from '../nodes.ts';

/** Between what is typed of an edition and what is stored: groups that are all there or not there, and whole numbers. */

type Body = Record<string, unknown>;

const isBody = (value: unknown): value is Body =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const rows = (value: unknown): Body[] => (Array.isArray(value) ? (value as unknown[]).filter(isBody) : []);
const mapped = (body: Body, list: string, change: (row: Body) => Body): Body =>
  list in body ? { ...body, [list]: rows(body[list]).map(change) } : body;
/** A chosen number is text on the screen. */
const asNumber = (value: unknown): unknown => (typeof value === 'string' ? Number(value) : value);
/** A part that the schema wants as null where it is not said, and the form leaves out. */
const orNull = (row: Body, ...names: readonly string[]): Body => ({
  ...Object.fromEntries(names.map((name) => [name, null])),
  ...row,
});

function completePayRules(row: Body): Body {
  const whole = orNull(row, 'holiday', 'week', 'increment');
  const week = isBody(whole['week'])
    ? { ...whole['week'], startsOn: asNumber(whole['week']['startsOn']) }
    : whole['week'];
  return mapped(
    mapped({ ...whole, week }, 'workingHours', (hours) => ({
      ...hours,
      days: Array.isArray(hours['days']) ? (hours['days'] as unknown[]).map(asNumber).sort() : [],
    })),
    'holidays',
    (rule) => ({
      ...rule,
      ...('nth' in rule ? { nth: asNumber(rule['nth']) } : {}),
      ...('weekday' in rule ? { weekday: asNumber(rule['weekday']) } : {}),
    }),
  );
}

function completeMachine(row: Body): Body {
  const { schedule, ...rest } = row;
  return isBody(schedule) && typeof schedule['code'] === 'string' ? row : rest;
}

/** What was typed, as the schema has it. */
export function completeEdition(typed: Record<string, unknown>): Record<string, unknown> {
  return mapped(mapped(typed, 'payRules', completePayRules), 'machines', completeMachine);
}

const yesNo = (is: boolean): string => (is ? 'yes' : 'no');
const fringeBy = (of: object | undefined): string =>
  of === undefined ? '' : 'share' in of ? 'share' : 'usd';
const withRows = (values: Values, list: string, change: (row: Values, at: number) => Values): Values => ({
  ...values,
  [list]: rowsOf(values[list]).map(change),
});
const texts = (value: Value | undefined): readonly string[] =>
  Array.isArray(value) ? (value as readonly unknown[]).map(String) : [];

/**
 * What would have been typed to give this edition. The price of water in an edition of before units and bases comes
 * with its unit and without a basis, which is then asked for.
 */
export function editionValues(nodes: readonly Node[], edition: RateBookEdition, zone: string): Values {
  const { water } = edition;
  const known =
    water !== null && 'per1000GalUsd' in water
      ? {
          ...edition,
          water: { usd: water.per1000GalUsd, per: '1000-gal', authorityId: water.authorityId },
        }
      : edition;
  let values = decode(nodes, known, zone);
  values = withRows(values, 'labor', (row, at) => {
    const fringe = edition.labor[at]?.fringe;
    return {
      ...row,
      _fringe: yesNo(fringe !== undefined),
      _regularBy: fringeBy(fringe?.regular),
      _premiumBy: fringeBy(fringe?.premium),
    };
  });
  values = withRows(values, 'machines', (row, at) => ({
    ...row,
    _increment: yesNo(edition.machines[at]?.increment !== undefined),
  }));
  return withRows(values, 'payRules', (row, at) => {
    const rules = edition.payRules?.[at];
    return {
      ...row,
      _holiday: yesNo(Boolean(rules?.holiday)),
      _week: yesNo(Boolean(rules?.week)),
      _increment: yesNo(Boolean(rules?.increment)),
      'week.startsOn': rules?.week ? String(rules.week.startsOn) : '',
      workingHours: rowsOf(row['workingHours']).map((hours) => ({ ...hours, days: texts(hours['days']) })),
      holidays: rowsOf(row['holidays']).map((rule, index) => {
        const holiday = rules?.holidays[index];
        return {
          ...rule,
          nth: holiday?.by === 'weekday' ? String(holiday.nth) : '',
          weekday: holiday?.by === 'weekday' ? String(holiday.weekday) : '',
        };
      }),
    };
  });
}

import type { Effective } from '../submissions/effective.ts';
import { folded, mayBePlate, plateKey, plateMatches } from './text.ts';

/** What of a fact's erasable fields a case is looked up by. Words: `search.by.<code>`. */
export const privateWays = ['plate', 'person', 'payer-number'] as const;
export type PrivateWay = (typeof privateWays)[number];

/** The least of a name, and of a number that somebody else gave, that is looked for. */
const LEAST_NAME = 3;
const LEAST_NUMBER = 4;

const nameMatches = (name: string | null | undefined, find: string): boolean => {
  const wanted = folded(find);
  return typeof name === 'string' && wanted.length >= LEAST_NAME && folded(name).includes(wanted);
};
/** However it is written: `lm77812` finds `LM-77812`. A number has a digit. */
const numberMatches = (number: string | null | undefined, find: string): boolean => {
  const key = plateKey(find);
  return (
    typeof number === 'string' &&
    key.length >= LEAST_NUMBER &&
    /\d/.test(key) &&
    plateKey(number).includes(key)
  );
};

/** Whether it is worth looking through erasable fields at all. */
export const mayBePrivate = (find: string): boolean => mayBePlate(find) || folded(find).length >= LEAST_NAME;

/** Whether any text of these fields could answer. What is found so is read again as it now stands. */
export function mayAnswer(fields: Readonly<Record<string, unknown>>, find: string): boolean {
  return Object.entries(fields).some(([path, value]) => path !== 'note' && within(value, find));
}
const within = (value: unknown, find: string): boolean =>
  typeof value === 'string'
    ? nameMatches(value, find) || numberMatches(value, find) || plateMatches(value, find)
    : typeof value === 'object' &&
      value !== null &&
      Object.values(value).some((inner) => within(inner, find));

/** By which of its erasable fields a fact, as it now stands, answers. */
export function privateMatches({ fact }: Effective, find: string): readonly PrivateWay[] {
  const matched: Record<PrivateWay, boolean> = { plate: false, person: false, 'payer-number': false };
  switch (fact.kind) {
    case 'party': {
      const { vehicles, driver, owner, insurer } = fact.body;
      matched.plate = vehicles.some(({ plate }) => plateMatches(plate, find));
      matched.person = nameMatches(driver?.name, find) || nameMatches(owner?.name, find);
      matched['payer-number'] = numberMatches(insurer?.claimNumber, find);
      break;
    }
    case 'claim-opened':
      matched['payer-number'] = numberMatches(fact.body.payer.reference, find);
      break;
    case 'claim-acknowledged':
      matched['payer-number'] = numberMatches(fact.body.reference, find);
      break;
    case 'adjuster-assigned':
      matched['payer-number'] = numberMatches(fact.body.adjuster.reference, find);
      matched.person = nameMatches(fact.body.adjuster.name, find);
      break;
    default:
      break;
  }
  return privateWays.filter((way) => matched[way]);
}

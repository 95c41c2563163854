import type { Wording } from '../core/words.ts';

/** Parameters as people read them: an instant in the utility's zone, a day as a day. What is neither stays as it is. */
export const sayParams = (
  params: Readonly<Record<string, string | number>>,
  words: Wording,
): Record<string, string | number> =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      typeof value === 'string' ? sayDate(value, words) : value,
    ]),
  );

function sayDate(value: string, words: Wording): string {
  if (/^\d{4}-\d\d-\d\d$/.test(value)) return words.day(value);
  return /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(value) ? words.when(value) : value;
}

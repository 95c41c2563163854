import { sayWarning } from '../../../../shared/hydraulics/sayWarning.ts';
import type { FlowTestWarning } from '../../../../shared/hydraulics/warning.ts';
import type { Wording } from '../core/words.ts';

const isDay = (value: string | number): value is string =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value);

/** A doubt about a flow test as a sentence, with its days written as this screen writes days. */
export function sayDoubt({ code, params }: FlowTestWarning, words: Wording): string {
  const written = Object.entries(params).map(
    ([name, value]) => [name, isDay(value) ? words.day(value) : value] as const,
  );
  return sayWarning({ code, params: Object.fromEntries(written) }, words);
}

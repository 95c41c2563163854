import { addDays } from '../../shared/clocks/count.ts';
import type { Outbox, StoredEntry } from '../stores/outbox/outbox.ts';

/** Letters of so many days, today's among them, are looked at: older ones are history. */
const DAYS_BACK = 7;

/** What is known of the last days' letters. */
export async function lettersOfLastDays(outbox: Outbox, today: string): Promise<readonly StoredEntry[]> {
  const days = Array.from({ length: DAYS_BACK }, (_, back) => addDays(today, -back));
  return (await Promise.all(days.map((day) => outbox.ofDay(day)))).flat();
}

export interface UndeliveredLetter {
  readonly day: string;
  readonly personId: string;
  readonly state: 'failed' | 'dead';
  readonly tries: number;
  readonly why: string | null;
}

/** Letters that failed, for the desk: to whom, how often tried, and whether anybody still tries. */
export async function undeliveredLetters(outbox: Outbox, today: string): Promise<UndeliveredLetter[]> {
  return (await lettersOfLastDays(outbox, today)).flatMap(
    ({ entry: { day, personId, state, tries, why } }) =>
      state === 'failed' || state === 'dead' ? [{ day, personId, state, tries, why }] : [],
  );
}

import { say, type Locale } from '../words/index.ts';
import type { PublicOutage } from './snapshot.ts';

/** What is being done about an outage, in words. */
export function doingWords(
  { stage, waitingFor, heldBy }: Pick<PublicOutage, 'stage' | 'waitingFor' | 'heldBy'>,
  locale: Locale,
): string {
  const code = (family: string, name: string): string => say(locale, `public.${family}.${name}`);
  // A return is on record and does not count: what stands in its way is the answer, and no stage.
  if (heldBy && heldBy.length > 0 && (stage === 'repaired' || stage === 'other'))
    return [
      ...(stage === 'repaired' ? [say(locale, 'public.repaired')] : []),
      ...heldBy.map((hold) => code('held', hold)),
    ].join(' ');
  const waiting = waitingFor !== null && waitingFor !== 'nothing' ? code('waiting', waitingFor) : '';
  // "Waiting for parts" says all; the stage before it would only repeat that nobody is at work.
  if (stage === 'waiting' && waiting !== '') return waiting;
  return [code('stage', stage), waiting].filter((words) => words !== '').join(' ');
}

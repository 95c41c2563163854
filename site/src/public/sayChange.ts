import type { PublicChange } from '../../../shared/public/hydrantPage.ts';
import type { Reader } from './reader.ts';

/** How the capacity changed, in a sentence for everyone; without figures where the utility keeps flows to itself. */
export function sayPublicChange(
  { verdict, figures, fromTestedAt, toTestedAt }: PublicChange,
  reader: Reader,
): string {
  const when = { from: reader.day(fromTestedAt), to: reader.day(toTestedAt) };
  if (!figures) return reader.say(`public.hydrant.change-bare.${verdict}`, when);
  return reader.say(`public.hydrant.change.${verdict}`, {
    ...when,
    percent: reader.number(Math.abs(figures.fraction) * 100),
    fromFlow: reader.quantity(figures.fromGpm, 'gpm'),
    toFlow: reader.quantity(figures.toGpm, 'gpm'),
  });
}

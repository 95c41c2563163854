import type { Wording } from '../../core/words.ts';

/** A length of time in hours and minutes: "2 h 15 min". */
export const sayLength = (minutes: number, { t }: Pick<Wording, 't'>): string =>
  t('running.length', { hours: Math.floor(minutes / 60), minutes: minutes % 60 });

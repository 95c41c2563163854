import type { PublicOutOfService } from '../../../../shared/public/snapshot.ts';

/** When a hydrant is expected back: at the latest of its outages, and not at all while one has no date. */
export function expectedOf(outages: PublicOutOfService['outages']): string | null {
  const dates = outages.flatMap(({ expectedAt }) => expectedAt ?? []);
  return dates.length < outages.length
    ? null
    : dates.reduce((latest, at) => (Date.parse(at) > Date.parse(latest) ? at : latest));
}

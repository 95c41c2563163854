import type { PublicSources } from '../../../shared/public/build.ts';
import { anOutage, aStatus, aStrike, inventoryOf, townHydrants, townNow } from '../../support/town.ts';

/** The largest utility that the public pages are made for. */
export const HYDRANTS = 250_000;
export const OUT = 2000;

/** It with so many out of service, spread evenly, one every ten minutes. */
export function cityWith(out: number): PublicSources {
  const hydrants = townHydrants(HYDRANTS);
  const every = Math.floor(HYDRANTS / OUT);
  const struck = hydrants.filter((_, index) => index % every === 0).slice(0, out);
  const since = (index: number): string => new Date(townNow.getTime() - (index + 1) * 600_000).toISOString();
  return {
    inventory: inventoryOf(hydrants),
    strikes: struck.map(({ hydrantId }, index) => aStrike(`s-${index}`, { hydrantId, since: since(index) })),
    statuses: struck.map(({ hydrantId }, index) =>
      aStatus(hydrantId, [anOutage(`s-${index}`, { since: since(index) })]),
    ),
    flowTests: new Map(),
  };
}

/** The same and the newest strike of all. */
export function oneMore(city: PublicSources): PublicSources {
  const hydrantId = city.inventory?.hydrants[77_777]?.hydrantId ?? '';
  const since = townNow.toISOString();
  return {
    ...city,
    strikes: [aStrike('s-new', { hydrantId, since }), ...city.strikes],
    statuses: [aStatus(hydrantId, [anOutage('s-new', { since })]), ...city.statuses],
  };
}

import { buildEdition, type PublicSources } from '../../shared/public/build.ts';
import { nextChanges, type FeedChanges } from '../../shared/feeds/changes.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { aHydrant, anOutage, aStatus, inventoryOf, townNow, townSettings } from './town.ts';

/** Ids as the ledger gives them, for what feeds are told apart by. */
export const uuids = {
  strike: '0195639e-2c00-7a3b-8d1e-5f0a9b8c7d01',
  main: '0195639e-2c00-7a3b-8d1e-5f0a9b8c7d02',
  past: '0195639e-2c00-7a3b-8d1e-5f0a9b8c7d03',
  work: '0195639e-2c00-7a3b-8d1e-5f0a9b8c7d04',
} as const;

export const feedSettings: UtilitySettings = { ...townSettings, publicUrl: 'https://hydrants.example/' };
export const alerting: UtilitySettings = {
  ...feedSettings,
  publishing: {
    ...feedSettings.publishing,
    alerts: { sender: 'hydrants.example', status: 'Actual', urgency: 'Unknown', severity: 'Minor' },
  },
};

/** Three hydrants on one street; the first struck, the second struck and its main shut, with work planned at the third. */
export const streetHydrants = [
  aHydrant('H-1', { place: 'Elm St at First Ave', ratedFlowGpm: 900 }),
  aHydrant('H-2', { latitudeDeg: 39.2012, place: '=HYPERLINK("x"), "Oak" & <Fir> St' }),
  aHydrant('H-3', { latitudeDeg: 39.2024, longitudeDeg: -98.4012, place: null }),
];
const strike = anOutage(uuids.strike, { since: '2026-03-04T18:40:00Z', expectedAt: '2026-03-06T22:00:00Z' });
const main = anOutage(uuids.main, { cause: 'main-shut', since: '2026-03-04T09:00:00Z' });

export const street = (statuses: PublicSources['statuses'] = []): PublicSources => ({
  inventory: inventoryOf(streetHydrants),
  statuses,
  strikes: [],
  flowTests: new Map(),
});
export const oneOut = street([aStatus('H-1', [strike])]);
export const twoReasons = street([aStatus('H-2', [strike, main])]);
export const workPlanned = street([
  aStatus('H-3', [], {
    planned: [
      {
        submissionId: uuids.work,
        work: 'replacement',
        from: '2026-03-10T14:00:00Z',
        to: '2026-03-10T18:00:00Z',
        takesOutOfService: true,
      },
    ],
  }),
]);
export const noneOut = street();
/** The strike is over; whether anything else is out is up to `open`. */
export const overAt = (endedAt: string, open: 'nothing-else' | 'main-shut' = 'nothing-else'): PublicSources =>
  street([
    aStatus(open === 'main-shut' ? 'H-2' : 'H-1', [
      { ...strike, endedAt },
      ...(open === 'main-shut' ? [main] : []),
    ]),
  ]);

export type Check = readonly [minutes: number, sources: PublicSources];

export const at = (minutes: number): string => new Date(townNow.getTime() + minutes * 60_000).toISOString();

export const editionOf = (sources: PublicSources, minutes = 0, settings = feedSettings): PublicEdition =>
  buildEdition(sources, settings, at(minutes));

/** What feeds remember after one publication of each, at the minutes given. */
export const changesAfter = (...checks: readonly Check[]): FeedChanges => {
  let changes: FeedChanges | null = null;
  for (const [minutes, sources] of checks) changes = nextChanges(changes, editionOf(sources, minutes));
  if (!changes) throw new Error('no check');
  return changes;
};

import { rangeProblems, refuse, type FormulaCard } from './card.ts';
import { ranges } from './ranges.ts';

export const hydrantClasses = ['AA', 'A', 'B', 'C'] as const;
export type HydrantClass = (typeof hydrantClasses)[number];

/** Words of the catalogue, `hydraulics.color.<color>`. */
export const hydrantColors = [
  'light-blue',
  'green',
  'orange',
  'red',
  'yellow',
  'white',
  'black',
  'silver',
] as const;

export interface ClassBand {
  readonly hydrantClass: HydrantClass;
  /** What the utility calls it, where it has a name of its own; records and files keep `hydrantClass`. */
  readonly name?: string | undefined;
  /** Least rated capacity, whole gpm. */
  readonly fromGpm: number;
  /** Colour of bonnet and caps. Never shown without the class. */
  readonly color: (typeof hydrantColors)[number];
}

/**
 * Class and colour by rated capacity, highest first. NFPA 291, 2007 and 2013 editions as quoted (second-hand). Some
 * places paint otherwise, so a utility may bring its own.
 */
export const standardBands: readonly ClassBand[] = [
  { hydrantClass: 'AA', fromGpm: 1500, color: 'light-blue' },
  { hydrantClass: 'A', fromGpm: 1000, color: 'green' },
  { hydrantClass: 'B', fromGpm: 500, color: 'orange' },
  { hydrantClass: 'C', fromGpm: 0, color: 'red' },
];

const argumentRanges = { ratedFlowGpm: ranges.flowGpm } as const;

/**
 * The band of a rated capacity. The printed bands (500 to 999, 1000 to 1499) leave gaps of one gallon, so the flow is
 * first rounded to the whole gpm, a half going up: 999.4 is B, 999.5 and 999.6 are A. The same rounding is shown, so
 * nobody reads "1,000 gpm, class B". @throws OutOfRange for a flow that is negative or not a number.
 */
export function classBand(ratedFlowGpm: number, bands: readonly ClassBand[] = standardBands): ClassBand {
  refuse(rangeProblems(argumentRanges, { ratedFlowGpm }));
  const wholeGpm = Math.round(ratedFlowGpm);
  const band = bands.find(({ fromGpm }) => wholeGpm >= fromGpm);
  if (!band) throw new Error('the class bands do not reach down to 0 gpm');
  return band;
}

export const hydrantClassOf = (
  ratedFlowGpm: number,
  bands: readonly ClassBand[] = standardBands,
): HydrantClass => classBand(ratedFlowGpm, bands).hydrantClass;

/** The name under which a class is shown. */
export const classNameOf = (
  hydrantClass: HydrantClass,
  bands: readonly ClassBand[] = standardBands,
): string => bands.find((band) => band.hydrantClass === hydrantClass)?.name ?? hydrantClass;

/** The card's result is the least capacity of the class, since a card answers with a number. */
export const hydrantClassCard: FormulaCard<'ratedFlowGpm'> = {
  id: 'hydrant-class',
  equation: 'AA from 1500 gpm, A from 1000, B from 500, C below; the flow rounded to the whole gpm first',
  sources: [
    { text: 'NFPA 291, 2007 and 2013 editions, marking of hydrants, as quoted', marker: 'second-hand' },
  ],
  arguments: argumentRanges,
  result: 'gpm',
  example: {
    given: { ratedFlowGpm: 1499 },
    expected: 1000,
    tolerance: 0,
    source: { text: 'NFPA 291, 2007 and 2013 editions, as quoted', marker: 'second-hand' },
  },
  notes: [
    'Capacity at the rating residual, not at another target.',
    'Colours are settings; some places differ.',
  ],
  compute: ({ ratedFlowGpm }) => classBand(ratedFlowGpm).fromGpm,
};

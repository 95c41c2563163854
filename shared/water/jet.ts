import { rangeProblems, refuse, type FormulaCard } from '../hydraulics/card.ts';
import { ranges } from '../hydraulics/ranges.ts';

/**
 * Water that rises from an upright opening. Above about one and a half diameters it is a jet and its height is the speed;
 * below about a third it only spills over the rim, as over a round weir; between the two, the lesser of both.
 */
export type RisingRegime = 'jet' | 'between' | 'weir';

/** Jet above this many diameters, weir below the other: USBR, Water Measurement Manual, chapter 14 (seen). */
export const JET_FROM_DIAMETERS = 1.4;
export const WEIR_TO_DIAMETERS = 0.37;

/** Contraction and drag of a jet: 0.87 to 0.97 (Engineering ToolBox, seen). The middle is the best guess. */
export const jetFactor = { low: 0.87, best: 0.92, high: 0.97 } as const;

const jetRanges = {
  diameterIn: ranges.openingIn,
  heightIn: ranges.seenIn,
  factor: { unit: '1', minimum: 0.5, maximum: 1 },
} as const;
const weirRanges = { diameterIn: ranges.openingIn, heightIn: ranges.seenIn } as const;

/** Flow of an upright jet, gpm: 5.68 k d² √h (in, in). @throws OutOfRange naming every argument outside its range. */
export function verticalJetGpm(given: {
  readonly diameterIn: number;
  readonly heightIn: number;
  readonly factor: number;
}): number {
  refuse(rangeProblems(jetRanges, { ...given }));
  return 5.68 * given.factor * given.diameterIn ** 2 * Math.sqrt(given.heightIn);
}

/** Flow over the rim of an upright pipe, gpm: 6.17 d^1.25 h^1.35 (in, in). @throws OutOfRange as above. */
export function rimWeirGpm(given: { readonly diameterIn: number; readonly heightIn: number }): number {
  refuse(rangeProblems(weirRanges, { ...given }));
  return 6.17 * given.diameterIn ** 1.25 * given.heightIn ** 1.35;
}

export interface RisingFlow {
  readonly flowGpm: number;
  readonly regime: RisingRegime;
  /** Stated accuracy of the equation: jet ±10 %, weir ±15 %; between, the wider. */
  readonly accuracyFraction: number;
  /** How fast the flow follows the height: an error of 1 % in height is this many percent of flow. */
  readonly heightExponent: number;
}

/** Flow of rising water by whichever equation its height calls for. @throws OutOfRange as above. */
export function risingFlow(given: { readonly diameterIn: number; readonly heightIn: number }): RisingFlow {
  const jet = { flowGpm: verticalJetGpm({ ...given, factor: jetFactor.best }), heightExponent: 0.5 };
  const weir = { flowGpm: rimWeirGpm(given), heightExponent: 1.35 };
  const diameters = given.heightIn / given.diameterIn;
  if (diameters > JET_FROM_DIAMETERS) return { ...jet, regime: 'jet', accuracyFraction: 0.1 };
  if (diameters < WEIR_TO_DIAMETERS) return { ...weir, regime: 'weir', accuracyFraction: 0.15 };
  const lesser = jet.flowGpm < weir.flowGpm ? jet : weir;
  return { ...lesser, regime: 'between', accuracyFraction: 0.15 };
}

export const verticalJetCard: FormulaCard<keyof typeof jetRanges> = {
  id: 'vertical-jet',
  equation: 'Q = 5.68 · k · d² · √h; k = 0.87 to 0.97; for h above 1.4 d',
  sources: [
    { text: 'Engineering ToolBox, flow of a vertical jet', marker: 'seen' },
    {
      text: 'USBR, Water Measurement Manual, chapter 14: regimes, ±10 % for a jet and ±15 % for a weir',
      marker: 'seen',
    },
  ],
  arguments: jetRanges,
  result: 'gpm',
  example: {
    given: { diameterIn: 4, heightIn: 36, factor: 0.97 },
    expected: 529,
    // Printed to the whole gallon.
    tolerance: 0.5,
    source: { text: 'Engineering ToolBox, its worked example', marker: 'seen' },
  },
  notes: [
    'Height above the opening, of a jet that rises freely. Air breaks up a tall one: it then reads low.',
  ],
  compute: verticalJetGpm,
};

export const rimWeirCard: FormulaCard<keyof typeof weirRanges> = {
  id: 'rim-weir',
  equation: 'Q = 6.17 · d^1.25 · h^1.35; for h below 0.37 d',
  sources: [
    {
      text: 'USBR, Water Measurement Manual, 2001, chapter 14, vertical pipes, as quoted in a package manual (W. H. Asquith)',
      marker: 'second-hand',
    },
  ],
  arguments: weirRanges,
  result: 'gpm',
  example: {
    given: { diameterIn: 8, heightIn: 1 },
    // 6.17 × 8^1.25, by hand: 8^1.25 = 2^3.75 = 13.4543.
    expected: 83.01,
    tolerance: 0.01,
    source: { text: 'arithmetic of the quoted equation', marker: 'computed' },
  },
  compute: rimWeirGpm,
};

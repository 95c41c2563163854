import { footingProblems } from '../costs/footing.ts';
import { evaluateFlowTest } from '../hydraulics/evaluateFlowTest.ts';
import { convert, conversionCards } from '../units/convert.ts';

/** Something that somebody else worked out and printed, and what this program makes of it. */
export interface KnownAnswer {
  readonly id: string;
  readonly source: string;
  readonly isRight: () => boolean;
}

/**
 * What a deployment asks itself to know that its arithmetic is sound: a runtime, a bundle or a dependency that computes
 * otherwise is found before anybody is billed or a hydrant's class is painted. One of water, one of money, one of units.
 */
export const knownAnswers: readonly KnownAnswer[] = [
  {
    id: 'flow-test',
    // 789 gpm is computed there; about 980 at 20 psi is read off a graph.
    source: 'K. Kolb, course slides on water supply, slides 15 and 16 (seen)',
    isRight: () => {
      const outlets = [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28, kind: 'hose' as const }];
      const { measuredFlowGpm, availableFlowGpm } = evaluateFlowTest({
        staticPsi: 86,
        residualPsi: 42,
        outlets,
      });
      return Math.abs(measuredFlowGpm - 789) < 1 && Math.abs((availableFlowGpm ?? 0) - 980) < 10;
    },
  },
  {
    id: 'bill',
    // The sum printed at 20 % is three cents short of its lines; that at the 13 % which was allowed foots.
    source: "Curt's Trucking v. Anchorage, 578 P.2d 975 (Alaska 1978) (seen)",
    isRight: () => {
      const line = (amountCents: number) => ({ section: 'costs', amountCents });
      const allowed = { lines: [line(4_457_72), line(579_50)], totalCents: 5_037_22 };
      const printed = { lines: [line(4_457_72), line(891_54)], totalCents: 5_349_23 };
      const [short] = footingProblems(printed);
      return footingProblems(allowed).length === 0 && short?.params['sumCents'] === 5_349_26;
    },
  },
  {
    id: 'units',
    source:
      'NIST SP 811 (2008), appendix B, and NIST Handbook 44, appendix C, as the cards of conversions have them',
    // Printed to seven digits.
    isRight: () =>
      conversionCards.every(
        ({ from, to, published }) => Math.abs(convert(1, from, to) / published - 1) < 5e-7,
      ),
  },
];

/** The ids of those that come out wrong; one that throws is wrong too. */
export const wrongAnswers = (answers: readonly KnownAnswer[] = knownAnswers): readonly string[] =>
  answers.flatMap(({ id, isRight }) => {
    try {
      return isRight() ? [] : [id];
    } catch {
      return [id];
    }
  });

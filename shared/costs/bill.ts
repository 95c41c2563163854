import type { Problem } from '../problems/problem.ts';
import { claimHandlingLines } from './claimHandling.ts';
import { contractorLines } from './contractors.ts';
import { editionOn } from './editions.ts';
import { coveredNotes, flatPriceLines, flatPricesFor, splitByFlatPrice } from './flatPrice.ts';
import { laborLines } from './labor.ts';
import type { DraftLine, Drafted } from './line.ts';
import { machineLines } from './machines.ts';
import { handlingLines, materialLines } from './materials.ts';
import type { RateBookEdition } from './rateBook.ts';
import { roundBySection } from './sectionRounding.ts';
import { overheadLines, salesTaxLines } from './shares.ts';
import { flowTestLines, waterLines, type WaterState } from './tariffs.ts';
import { creditLines, jobFeeLines, minimumChargeLines, totalRoundingLines } from './wholeBill.ts';
import type { Work } from './work.ts';

export interface DraftBill extends Drafted {
  readonly waterState: WaterState;
}

/**
 * What was done, priced by time and materials, before anything is laid on it. `whole` is all the work: hours are counted
 * over it, and lines are made of the classes that `wanted` names.
 */
function workLines(
  work: Work,
  whole: Work,
  wanted: (laborClass: string) => boolean,
  editions: readonly RateBookEdition[],
): Drafted[] {
  return [
    laborLines(whole, editions, wanted),
    machineLines(work, editions),
    materialLines(work, editions),
    contractorLines(work),
    waterLines(work, editions),
    flowTestLines(work, editions),
  ];
}

const linesOf = (drafted: readonly Drafted[]): DraftLine[] => drafted.flatMap(({ lines }) => [...lines]);

/**
 * Every line of a bill, in the order in which one stands on another: the work, or the flat price in its place; tax on
 * materials; fees; rounding by section where the book says so; overheads on lines as they print; time on the claim;
 * the least charge; credits; the tariff's own rounding. What is laid on the whole is by the edition of the strike's day.
 */
export function draftBill(work: Work, editions: readonly RateBookEdition[]): DraftBill {
  const { edition } = editionOn(work.strike.date, editions);
  const { billed, covered, labor, tariffs } = splitByFlatPrice(work, flatPricesFor(edition, work));
  const done = workLines(billed, work, labor, editions);
  const coveredLines =
    tariffs.length > 0 ? linesOf(workLines(covered, work, (laborClass) => !labor(laborClass), editions)) : [];
  const round = (lines: readonly DraftLine[]): readonly DraftLine[] =>
    edition?.rounding === 'section-to-cent' ? roundBySection(lines) : lines;

  const direct = linesOf(done);
  const rounded = round([...flatPriceLines(tariffs, edition, work), ...direct]);
  const priced = [...rounded, ...handlingLines(rounded, editions)];
  const taxed = [...priced, ...salesTaxLines(priced, edition, work), ...jobFeeLines(edition, work)];
  const overheads = overheadLines(taxed, edition, work);
  const handling = claimHandlingLines(work, editions);
  const charged = [...taxed, ...overheads, ...handling.lines];
  const atLeast = [...charged, ...minimumChargeLines(charged, edition, work)];
  const credits = creditLines(atLeast, work);
  const all = [...atLeast, ...credits.lines];

  const problems: Problem[] = [
    ...done.flatMap((part) => [...part.problems]),
    ...handling.problems,
    ...credits.problems,
  ];
  const { state } = waterLines(work, editions);
  return {
    lines: [...all, ...totalRoundingLines(all, edition, work)],
    problems,
    notes: [
      ...done.flatMap((part) => [...part.notes]),
      ...handling.notes,
      ...coveredNotes(coveredLines, tariffs),
    ],
    waterState: state,
  };
}

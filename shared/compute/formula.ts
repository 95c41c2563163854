import * as z from 'zod';
import { cards } from '../hydraulics/cards.ts';
import { OutOfRange, type FormulaCard } from '../hydraulics/card.ts';
import { problem } from '../problems/problem.ts';
import type { UnitId } from '../units/units.ts';
import { say } from '../words/index.ts';
import { computation } from './computation.ts';
import { Refused } from './refused.ts';

const ids = cards.map(({ id }) => id) as [string, ...string[]];

/** The name under which a result goes out, so that it can go out in either system. */
const resultName: Partial<Record<UnitId | '1', string>> = {
  gpm: 'resultGpm',
  psi: 'resultPsi',
  ft: 'resultFt',
  gal: 'resultGal',
};

/** Arguments that are missing or that the formula does not have. */
function wrongArguments({ arguments: wanted }: FormulaCard, given: Readonly<Record<string, number>>) {
  const missing = Object.keys(wanted).filter((name) => !Object.hasOwn(given, name));
  const unknown = Object.keys(given).filter((name) => !Object.hasOwn(wanted, name));
  return [
    ...missing.map((name) => problem('required', `given.${name}`, { expected: 'number' })),
    ...unknown.map((name) => problem('unknown-field', `given.${name}`, { field: name })),
  ];
}

/** The formula names its arguments; the question has them under `given`. */
function computed(card: FormulaCard, given: Readonly<Record<string, number>>): number {
  try {
    return card.compute(given);
  } catch (error) {
    if (error instanceof OutOfRange)
      throw new Refused(error.problems.map((found) => ({ ...found, path: `given.${found.path}` })));
    throw error;
  }
}

export const formula = computation({
  name: 'formula',
  summary: 'water.compute.formula.summary',
  output: 'water.compute.formula.output',
  eitherSystem: true,
  input: z.strictObject({ formula: z.enum(ids), given: z.record(z.string(), z.number()) }),
  example: {
    formula: 'hazen-williams',
    given: { flowGpm: 200, diameterIn: 3.048, roughness: 140, lengthFt: 30 },
  },
  run: ({ formula: id, given }, { locale }) => {
    const card = cards.find((one) => one.id === id);
    if (!card) throw new Error(`no card ${id}`);
    const wrong = wrongArguments(card, given);
    if (wrong.length > 0) throw new Refused(wrong);
    return {
      title: say(locale, `hydraulics.card.${id}`),
      equation: card.equation,
      [resultName[card.result] ?? 'result']: computed(card, given),
      sources: card.sources,
      notes: card.notes ?? [],
    };
  },
});

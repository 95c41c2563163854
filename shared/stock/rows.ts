import * as z from 'zod';
import { problemIssue } from '../problems/fromZod.ts';
import { relations } from '../problems/relations.ts';
import { chosenId, shortText } from '../submissions/fields.ts';
import { nameKey } from './names.ts';

/** No shelf of repair parts holds more; a larger number is a slip of the pen. */
export const MOST_OF_A_PART = 100_000;
const MOST_ROWS = 200;

/** A part by its number, as the model's kit and the rate book have it; what it is, where the number is not enough. */
export const part = { partNumber: chosenId, description: shortText.nullable() } as const;

/** Parts of one shelf, each once: of two figures for one part nobody could say which holds. */
export const eachOnce = <Row extends z.ZodType<{ partNumber: string }>>(row: Row) =>
  z
    .array(row)
    .min(1)
    .max(MOST_ROWS)
    .check(
      relations((rows, ctx) => {
        const seen = new Set<string>();
        rows.forEach(({ partNumber }, index) => {
          const key = nameKey(partNumber);
          if (seen.has(key)) ctx.addIssue(problemIssue('part-twice', [index, 'partNumber'], { partNumber }));
          seen.add(key);
        });
      }),
    );

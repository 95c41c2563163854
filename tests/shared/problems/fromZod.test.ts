import * as z from 'zod';
import { expect, it } from 'vitest';
import { problemsFromZod } from '../../../shared/problems/fromZod.ts';

const edition = z.strictObject({ id: z.string(), title: z.string() });
const oneOrMany = z.strictObject({ book: z.union([edition, z.array(edition)]) });
const problemsOf = (input: unknown): string[] => {
  const parsed = oneOrMany.safeParse(input, { reportInput: true });
  return parsed.success
    ? []
    : problemsFromZod(parsed.error.issues).map(({ code, path }) => `${path} ${code}`);
};

it('says of one thing or several what is wrong in the one that was given', () => {
  // An object with two fields missing is still nearer than "this must be a list".
  expect(problemsOf({ book: {} })).toEqual(['book.id required', 'book.title required']);
  expect(problemsOf({ book: [{ id: 'a' }] })).toEqual(['book.0.title required']);
  expect(problemsOf({ book: 'text' })).toEqual(['book wrong-type']);
});

import { problem, type Problem } from '../problems/problem.ts';

interface Bill {
  readonly lines: readonly { readonly section: string; readonly amountCents: number | null }[];
  readonly sections?: readonly { readonly section: string; readonly subtotalCents: number }[];
  readonly totalCents: number;
}

/**
 * A bill that does not foot is refused: lines must add up to their section and to the total, to the cent. Empty when
 * it foots. Lines without an amount count as nothing here; that they make a statement incomplete is said elsewhere.
 */
export function footingProblems({ lines, sections = [], totalCents }: Bill): Problem[] {
  const sum = (of: Bill['lines']): number =>
    of.reduce((cents, { amountCents }) => cents + (amountCents ?? 0), 0);
  const found: Problem[] = [];
  sections.forEach(({ section, subtotalCents }, index) => {
    const sumCents = sum(lines.filter((line) => line.section === section));
    if (sumCents !== subtotalCents)
      found.push(
        problem('does-not-foot', `sections.${index}.subtotalCents`, {
          printedCents: subtotalCents,
          sumCents,
        }),
      );
  });
  const sumCents = sum(lines);
  if (sumCents !== totalCents)
    found.push(problem('does-not-foot', 'totalCents', { printedCents: totalCents, sumCents }));
  return found;
}

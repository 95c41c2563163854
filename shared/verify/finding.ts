import { formatCents } from '../costs/money.ts';
import { problem, type Problem } from '../problems/problem.ts';
import { sayProblem, hasWords, say, type Locale } from '../words/index.ts';

/**
 * Something in which a packet contradicts itself. `path` is the place in the packet's data (`statement.lines.3`) or,
 * for what is printed, `page.<n>`; the sentence is `verify.finding.<code>` in the catalogue.
 */
export type Finding = Problem;
export const finding: (code: string, path?: string, params?: Finding['params']) => Finding = problem;

/** Cents as money: every parameter whose name ends in `Cents`. */
const spoken = (params: Finding['params']): Record<string, string | number> =>
  Object.fromEntries(
    Object.entries(params).map(([name, value]) => [
      name,
      name.endsWith('Cents') && typeof value === 'number' ? formatCents(value) : value,
    ]),
  );

/** The finding as a sentence that says where it is and what would be right. */
export function sayFinding(locale: Locale, { code, params }: Finding): string {
  const key = `verify.finding.${code}`;
  if (!hasWords(key)) return sayProblem(locale, { code, params });
  const { section, rule } = params;
  return say(locale, key, {
    ...spoken(params),
    ...(typeof section === 'string' ? { section: say(locale, `packet.section.${section}`) } : {}),
    // A rule of the forms that the data break, in its own words.
    ...(typeof rule === 'string' ? { why: sayProblem(locale, { code: rule, params }) } : {}),
  });
}

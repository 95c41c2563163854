import { problem, type Problem } from '../problems/problem.ts';

/** What may be named, and what it says; null: nothing is recorded of it. */
type Values = Readonly<Record<string, string | null>>;

export interface MergedLetter {
  /** Plain text, in order. A line break within one is kept: an address, a list of sums. */
  readonly paragraphs: readonly string[];
  /** `letter-field-unknown`, `letter-field-empty`, `letter-brace`, `letter-bracket`; each names what it is about. */
  readonly problems: readonly Problem[];
}

const FIELD = /\{([^{}]*)\}/g;
/** Text in square brackets that uses a field: left out when one of its fields is empty. */
const OPTIONAL = /\[([^[\]]*\{[^[\]]*)\]/g;

interface Part {
  readonly text: string;
  readonly optional: boolean;
}

function partsOf(text: string): Part[] {
  const parts: Part[] = [];
  let from = 0;
  for (const found of text.matchAll(OPTIONAL)) {
    parts.push({ text: text.slice(from, found.index), optional: false });
    parts.push({ text: found[1] ?? '', optional: true });
    from = found.index + found[0].length;
  }
  parts.push({ text: text.slice(from), optional: false });
  return parts;
}

const fieldsIn = (text: string): string[] => [...text.matchAll(FIELD)].map(([, name = '']) => name.trim());

/**
 * A letter's text with its merge fields filled in. Pure; a value is put in as it is and never read again for fields,
 * so nothing that somebody typed elsewhere can pull a fact into a letter. What cannot be filled in stays visible in
 * square brackets and is a problem: a letter with a problem is not sent.
 */
export function mergeLetter(text: string, values: Values): MergedLetter {
  const problems = new Map<string, Problem>();
  const found = (code: string, field: string): void => {
    problems.set(`${code} ${field}`, problem(code, `letter.${field}`, { field }));
  };
  const fill = (part: string): string =>
    part.replaceAll(FIELD, (_, inner: string) => {
      const field = inner.trim();
      if (!Object.hasOwn(values, field)) {
        found('letter-field-unknown', field);
        return `[${field}]`;
      }
      const value = values[field] ?? null;
      if (value !== null) return value;
      found('letter-field-empty', field);
      return `[${field}]`;
    });
  const merged = partsOf(text.replaceAll(/\r\n?/g, '\n'))
    .map(({ text: part, optional }) => {
      const bare = part.replaceAll(FIELD, '');
      if (/[{}]/.test(bare)) found('letter-brace', '');
      if (!optional && (bare.match(/\[/g)?.length ?? 0) !== (bare.match(/\]/g)?.length ?? 0))
        found('letter-bracket', '');
      const left =
        optional &&
        fieldsIn(part).some((field) => Object.hasOwn(values, field) && (values[field] ?? null) === null);
      return left ? '' : fill(part);
    })
    .join('');
  const paragraphs = merged
    .split(/\n[^\S\n]*\n+/)
    .map((paragraph) =>
      paragraph
        .split('\n')
        .map((line) => line.replaceAll(/\s+/g, ' ').trim())
        .filter((line) => line !== '')
        .join('\n'),
    )
    .filter((paragraph) => paragraph !== '');
  return { paragraphs, problems: [...problems.values()] };
}

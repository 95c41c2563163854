/** A token of a content stream (ISO 32000-2, 7.2 and 7.8.2). What lies in strings, arrays and dictionaries is left out. */
export type Token =
  | { readonly type: 'number'; readonly value: number }
  | { readonly type: 'name'; readonly value: string }
  | { readonly type: 'operator'; readonly value: string }
  /** A string, array or dictionary: how many signs of text its strings can hold, two bytes to a sign. */
  | { readonly type: 'other'; readonly signs: number };

const isSpace = (sign: string | undefined): boolean => sign !== undefined && '\0\t\n\f\r '.includes(sign);
const isDelimiter = (sign: string | undefined): boolean => sign !== undefined && '()<>[]{}/%'.includes(sign);
const isRegular = (sign: string | undefined): boolean =>
  sign !== undefined && !isSpace(sign) && !isDelimiter(sign);

/** The tokens of a program, one character for each byte. A picture within it (`BI` … `EI`) is the operator `BI` alone. */
export function tokensOf(program: string): Token[] {
  const tokens: Token[] = [];
  let at = 0;
  // Arrays and dictionaries are one operand, whatever is in them.
  let depth = 0;
  let signs = 0;
  const strings = (bytes: number): void => {
    if (depth === 0) tokens.push({ type: 'other', signs: bytes / 2 });
    else signs += bytes / 2;
  };
  const push = (token: Token): void => {
    if (depth === 0) tokens.push(token);
  };
  const regular = (): string => {
    const from = at;
    while (isRegular(program[at])) at += 1;
    return program.slice(from, at);
  };
  while (at < program.length) {
    const sign = program[at];
    if (isSpace(sign)) at += 1;
    else if (sign === '%') {
      while (at < program.length && program[at] !== '\n' && program[at] !== '\r') at += 1;
    } else if (sign === '(') {
      const from = at;
      at = afterString(program, at);
      strings(at - from - 2);
    } else if (sign === '/') {
      at += 1;
      const name = regular().replace(/#([0-9a-f]{2})/gi, (_, hex: string) =>
        String.fromCharCode(Number.parseInt(hex, 16)),
      );
      push({ type: 'name', value: name });
    } else if (sign === '<' && program[at + 1] !== '<') {
      const end = program.indexOf('>', at);
      strings(((end === -1 ? program.length : end) - at - 1) / 2);
      at = end === -1 ? program.length : end + 1;
    } else if (sign === '[' || sign === '<') {
      if (depth === 0) signs = 0;
      depth += 1;
      at += sign === '[' ? 1 : 2;
    } else if (sign === ']' || sign === '>') {
      depth = Math.max(0, depth - 1);
      push({ type: 'other', signs });
      at += sign === ']' || program[at + 1] !== '>' ? 1 : 2;
    } else if (isDelimiter(sign)) at += 1;
    else {
      const word = regular();
      if (/^[+-]?(\d+\.?\d*|\.\d+)$/.test(word)) push({ type: 'number', value: Number(word) });
      else push({ type: 'operator', value: word });
      if (word === 'BI' && depth === 0) at = afterPicture(program, at);
    }
  }
  return tokens;
}

function afterString(program: string, from: number): number {
  let depth = 0;
  for (let at = from; at < program.length; at += 1) {
    const sign = program[at];
    if (sign === '\\') at += 1;
    else if (sign === '(') depth += 1;
    else if (sign === ')') {
      depth -= 1;
      if (depth === 0) return at + 1;
    }
  }
  return program.length;
}

function afterPicture(program: string, from: number): number {
  const end = /[\0\t\n\f\r ]EI(?=[\0\t\n\f\r ]|$)/g;
  end.lastIndex = from;
  return end.exec(program) ? end.lastIndex : program.length;
}

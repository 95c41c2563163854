import { plain } from './plain.ts';

/** Many pieces as one text to compare, which still knows what stands where. */
export interface Joined<T> {
  readonly text: string;
  /** The pieces that a stretch touches; of an empty stretch, the one that it stands in or after. */
  touched(from: number, to: number): readonly T[];
}

export function joined<T extends { readonly text: string }>(pieces: readonly T[]): Joined<T> {
  const starts: number[] = [];
  const texts: string[] = [];
  let length = 0;
  for (const { text } of pieces) {
    starts.push(length);
    const signs = plain(text);
    texts.push(signs);
    length += signs.length;
  }
  /** The last piece that starts at or before a position. */
  const pieceAt = (position: number): number => {
    let [low, high] = [0, starts.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= position) low = middle + 1;
      else high = middle;
    }
    return Math.max(0, low - 1);
  };
  return {
    text: texts.join(''),
    touched: (from, to) => pieces.slice(pieceAt(from), pieceAt(Math.max(from, to - 1)) + 1),
  };
}

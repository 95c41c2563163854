import { plain } from './plain.ts';

/** Many pieces as one text to compare, which still knows what stands where. */
export interface Joined<T> {
  readonly text: string;
  /** The pieces that a stretch touches; of an empty stretch, the one that it stands in or after. */
  touched(from: number, to: number): readonly T[];
  /** As much of those pieces as a sentence can quote, around the stretch, in their own words and spaces. */
  quote(from: number, to: number, most: number): string;
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
  const touched = (from: number, to: number): readonly T[] =>
    pieces.slice(pieceAt(from), pieceAt(Math.max(from, to - 1)) + 1);
  return {
    text: texts.join(''),
    touched,
    quote(from, to, most) {
      const all = touched(from, to)
        .map(({ text }) => text)
        .join(' ')
        .replace(/\s+/g, ' ')
        .trim();
      if (all.length <= most) return all;
      const start = starts[pieceAt(from)] ?? 0;
      const [first, last] = [spacedAt(all, from - start), spacedAt(all, to - start)];
      if (last - first >= most) return `${all.slice(first, first + most)} …`;
      const margin = Math.floor((most - (last - first)) / 2);
      const [left, right] = [Math.max(0, first - margin), Math.min(all.length, last + margin)];
      return `${left > 0 ? '… ' : ''}${all.slice(left, right).trim()}${right < all.length ? ' …' : ''}`;
    },
  };
}

/** Where in a text stands the sign that is at this place once it is made plain. */
function spacedAt(text: string, plainAt: number): number {
  let seen = 0;
  for (let at = 0; at < text.length; at += 1) {
    if (seen >= plainAt) return at;
    seen += plain(text[at] ?? '').length;
  }
  return text.length;
}

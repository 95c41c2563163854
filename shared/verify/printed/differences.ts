/** A stretch of each text that has no like in the other; positions in signs, `to` not included. */
export interface Gap {
  readonly wantedFrom: number;
  readonly wantedTo: number;
  readonly foundFrom: number;
  readonly foundTo: number;
}

/** Lengths of the stretches by which texts are laid beside each other: long ones first, they are seldom alike by chance. */
const lengths = [32, 16, 8, 4];

/**
 * Where two long texts differ. Stretches that stand once in each are laid beside each other in their order (the
 * longest increasing run of them, as patience diff does); between two of them the same is done with shorter ones; what
 * is left once both ends are trimmed is a gap. Linear in the texts for texts that are alike.
 */
export function differences(wanted: string, found: string): Gap[] {
  return between(
    wanted,
    found,
    { wantedFrom: 0, wantedTo: wanted.length, foundFrom: 0, foundTo: found.length },
    0,
  );
}

function between(wanted: string, found: string, whole: Gap, level: number): Gap[] {
  const gap = trimmed(wanted, found, whole);
  const { wantedFrom, wantedTo, foundFrom, foundTo } = gap;
  if (wantedFrom === wantedTo && foundFrom === foundTo) return [];
  const length = lengths[level];
  if (length === undefined || wantedFrom === wantedTo || foundFrom === foundTo) return [gap];
  const marks = increasing(anchors(wanted, found, gap, length));
  if (marks.length === 0) return between(wanted, found, gap, level + 1);
  const gaps: Gap[] = [];
  let from = { wanted: wantedFrom, found: foundFrom };
  const ends = [...marks, [wantedTo, foundTo] as const];
  ends.forEach(([wantedAt, foundAt], index) => {
    // An anchor that the one before it runs into is part of the same stretch.
    if (wantedAt < from.wanted || foundAt < from.found) return;
    gaps.push(
      ...between(
        wanted,
        found,
        { wantedFrom: from.wanted, wantedTo: wantedAt, foundFrom: from.found, foundTo: foundAt },
        // Anchors of this length were all used; between them shorter ones are looked for.
        level + 1,
      ),
    );
    if (index < marks.length) {
      let [w, f] = [wantedAt, foundAt];
      while (w < wantedTo && f < foundTo && wanted[w] === found[f]) [w, f] = [w + 1, f + 1];
      from = { wanted: w, found: f };
    }
  });
  return gaps;
}

function trimmed(wanted: string, found: string, gap: Gap): Gap {
  let { wantedFrom, wantedTo, foundFrom, foundTo } = gap;
  while (wantedFrom < wantedTo && foundFrom < foundTo && wanted[wantedFrom] === found[foundFrom])
    [wantedFrom, foundFrom] = [wantedFrom + 1, foundFrom + 1];
  while (wantedFrom < wantedTo && foundFrom < foundTo && wanted[wantedTo - 1] === found[foundTo - 1])
    [wantedTo, foundTo] = [wantedTo - 1, foundTo - 1];
  return { wantedFrom, wantedTo, foundFrom, foundTo };
}

type Pair = readonly [wantedAt: number, foundAt: number];

/** Stretches of this length that stand exactly once on either side of the gap. */
function anchors(wanted: string, found: string, gap: Gap, length: number): Pair[] {
  const once = (text: string, from: number, to: number): Map<string, number | null> => {
    const seen = new Map<string, number | null>();
    for (let at = from; at + length <= to; at += 1) {
      const stretch = text.slice(at, at + length);
      seen.set(stretch, seen.has(stretch) ? null : at);
    }
    return seen;
  };
  const theirs = once(found, gap.foundFrom, gap.foundTo);
  const pairs: Pair[] = [];
  for (const [stretch, at] of once(wanted, gap.wantedFrom, gap.wantedTo)) {
    const other = theirs.get(stretch);
    if (at !== null && other !== null && other !== undefined) pairs.push([at, other]);
  }
  return pairs.sort(([a], [b]) => a - b);
}

/** The longest run of pairs that increase on both sides (patience sorting). */
function increasing(pairs: readonly Pair[]): Pair[] {
  const tails: number[] = [];
  const before = new Array<number>(pairs.length).fill(-1);
  const foundAt = (index: number): number => pairs[index]?.[1] ?? 0;
  pairs.forEach(([, at], index) => {
    let [low, high] = [0, tails.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (foundAt(tails[middle] ?? 0) < at) low = middle + 1;
      else high = middle;
    }
    before[index] = low > 0 ? (tails[low - 1] ?? -1) : -1;
    tails[low] = index;
  });
  const run: Pair[] = [];
  for (let index = tails.at(-1) ?? -1; index >= 0; index = before[index] ?? -1) {
    const pair = pairs[index];
    if (pair) run.push(pair);
  }
  return run.reverse();
}

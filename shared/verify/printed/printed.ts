import type { PacketDocument } from '../../packet/blocks.ts';
import type { TextRun } from '../file/pageText.ts';
import { finding, type Finding } from '../finding.ts';
import { differences, type Gap } from './differences.ts';
import { joined, type Joined } from './joined.ts';
import { placeFindings } from './places.ts';
import { isPrintedAs } from './plain.ts';
import { runningFindings } from './running.ts';
import type { Wording } from './wording.ts';
import { wantedTexts, type WantedText } from './wanted.ts';

interface PageRun extends TextRun {
  readonly page: number;
}

/** What does not fit, and what is only worded as another edition of the program words it. */
export interface Printed {
  readonly findings: readonly Finding[];
  readonly remarks: readonly Finding[];
}

/** More than these tell nothing further: the file is then another packet's, or none. */
const MOST_FINDINGS = 60;
/** As much of a text as a sentence quotes. */
const MOST_QUOTED = 160;

/**
 * Whether the pages print what the packet's data give, sign by sign. The text of the pages is asked for in the order in
 * which it is drawn, so a figure that was changed, added, left out or moved shows, with the page that bears it.
 */
export function printedFindings(
  document: PacketDocument,
  pages: readonly (readonly TextRun[])[],
  paperPages: ReadonlySet<number>,
  wording: Wording,
): Printed {
  const runs = pages.flatMap((page, index) => page.map((run) => ({ ...run, page: index + 1 })));
  const found = joined<PageRun>(runs.filter(({ artifact }) => !artifact));
  const texts = wantedTexts(document);
  const wanted = joined(texts);
  const gaps = differences(wanted.text, found.text).filter((gap) => !isForgiven(gap, wanted, found));
  const all = merged(gaps, wanted).map((gap) => ({
    found: findingOf(gap, wanted, found),
    excused: wording.excuses(
      textAt(wanted, gap.wantedFrom, gap.wantedTo),
      textAt(found, gap.foundFrom, gap.foundTo),
    ),
  }));
  const differing = all.filter(({ excused }) => !excused).map((each) => each.found);
  const remarks = all.filter(({ excused }) => excused).map((each) => each.found);
  const rest = differing.length - MOST_FINDINGS;
  const moved =
    remarks.length === 0 && wanted.text.length === found.text.length ? placeFindings(texts, found) : [];
  const findings = [
    ...runningFindings(document, pages, paperPages),
    ...moved.slice(0, MOST_FINDINGS),
    ...differing.slice(0, MOST_FINDINGS),
    ...(rest > 0 ? [finding('printed-more', 'pages', { count: rest })] : []),
  ];
  return { findings, remarks };
}

/** All that stands in the pieces that a stretch touches; of none, nothing. */
const textAt = <T extends { readonly text: string }>(all: Joined<T>, from: number, to: number): string =>
  from === to
    ? ''
    : all
        .touched(from, to)
        .map(({ text }) => text)
        .join(' ');

/** A sign that no embedded face has is printed as a question mark, and a caption may be cut where its room ends. */
function isForgiven(
  { wantedFrom, wantedTo, foundFrom, foundTo }: Gap,
  wanted: Joined<WantedText>,
  found: Joined<PageRun>,
): boolean {
  const missing = wanted.text.slice(wantedFrom, wantedTo);
  const there = found.text.slice(foundFrom, foundTo);
  if (there === '') {
    const pieces = wanted.touched(wantedFrom, wantedTo);
    return pieces.length === 1 && pieces[0]?.mayEnd === true;
  }
  const [signs, printed] = [Array.from(missing), Array.from(there)];
  return signs.length === printed.length && signs.every((sign, index) => isPrintedAs(sign, printed[index]));
}

/** Gaps in the same piece of text are one: a sentence is said to differ once. */
function merged(gaps: readonly Gap[], wanted: Joined<WantedText>): Gap[] {
  const out: Gap[] = [];
  for (const gap of gaps) {
    const last = out.at(-1);
    const before = last && wanted.touched(last.wantedFrom, last.wantedTo).at(-1);
    if (last && before === wanted.touched(gap.wantedFrom, gap.wantedTo)[0])
      out[out.length - 1] = { ...last, wantedTo: gap.wantedTo, foundTo: gap.foundTo };
    else out.push(gap);
  }
  return out;
}

function findingOf(gap: Gap, wanted: Joined<WantedText>, found: Joined<PageRun>): Finding {
  const pieces = wanted.touched(gap.wantedFrom, gap.wantedTo);
  const runs = found.touched(gap.foundFrom, gap.foundTo);
  const first = pieces[0];
  // Text that is all missing is missed where it should begin: on the page of what stands before it.
  const page = runs[0]?.page ?? 1;
  const params = {
    page,
    under: first?.under ?? '',
    of: pieces.find(({ of }) => of !== '')?.of ?? '',
    own: wanted.quote(gap.wantedFrom, gap.wantedTo, MOST_QUOTED),
    printed: found.quote(gap.foundFrom, gap.foundTo, MOST_QUOTED),
    hasOf: pieces.some(({ of }) => of !== '') ? 'yes' : 'no',
    count: pieces.length,
  };
  const path = `page.${page}`;
  if (gap.foundFrom === gap.foundTo && pieces.length > 1) return finding('printed-missing', path, params);
  if (gap.wantedFrom === gap.wantedTo) return finding('printed-added', path, params);
  // Other words with the same figures: also what another edition of this program would have written.
  return finding(
    figures(params.own) === figures(params.printed) ? 'printed-words' : 'printed-differs',
    path,
    params,
  );
}

const figures = (text: string): string => (text.match(/\d+/g) ?? []).join(' ');

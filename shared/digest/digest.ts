import type { ListedDeadline } from '../clocks/list.ts';
import { listDeadlines } from '../clocks/list.ts';
import type { QuietClaim } from '../clocks/quiet.ts';
import type { ClockName } from '../clocks/settings.ts';
import { dayText, deadlineWords } from '../clocks/words.ts';
import type { LocalDate } from '../costs/days.ts';
import { say, type Locale } from '../words/index.ts';

export interface DigestQuestion {
  readonly deadlines: readonly ListedDeadline[];
  /** Open claims of which no date runs. */
  readonly quiet: readonly QuietClaim[];
  readonly today: LocalDate;
  readonly locale: Locale;
  readonly utilityName: string;
  readonly publicUrl: string | null;
  /** Clocks for which the utility has no rule. */
  readonly notSet: readonly ClockName[];
  /** Earlier letters that could not be delivered. */
  readonly undelivered: number;
}

export interface Digest {
  readonly subject: string;
  readonly text: string;
  /** Something is overdue, due within a week, or warned of, or a claim is open that no date reminds of. */
  readonly something: boolean;
}

/** More of one part than anybody reads in a letter; the rest is on the desk. */
const MOST_LINES = 40;
const farOff: readonly ClockName[] = ['limitation', 'government-notice'];

/**
 * The daily letter: overdue, today, this week, dates to sue that are being warned of, records whose retention is over,
 * open claims of which no date runs.
 * Claim numbers, clocks and citations, and nothing of any person: mail is read by more machines than the desk.
 */
export function digestOf(question: DigestQuestion): Digest {
  const { deadlines, quiet, today, locale, utilityName, publicUrl, notSet, undelivered } = question;
  const on = dayText(locale, today);
  const { overdue, today: dueToday, week, later, records } = listDeadlines(deadlines, today);
  const warned = later.filter(({ clock, warnFrom }) => farOff.includes(clock) && warnFrom <= today);
  const parts = [
    ['digest.overdue', overdue],
    ['digest.today', dueToday],
    ['digest.week', week],
    ['digest.limitation', warned],
    ['digest.records', records],
  ] as const;
  const filled = parts.filter(([, items]) => items.length > 0);
  const lines = [
    say(locale, 'digest.greeting', { on }),
    ...filled.flatMap(([title, items]) => [
      '',
      say(locale, title),
      ...shortened(items).flatMap((item) => lineOf(item, locale)),
      ...(items.length > shortened(items).length
        ? [say(locale, 'digest.more', { count: items.length - shortened(items).length })]
        : []),
    ]),
    ...quietLines(quiet, locale),
    ...(filled.length === 0 && quiet.length === 0 ? ['', say(locale, 'digest.nothing')] : []),
    ...(notSet.length > 0
      ? [
          '',
          say(locale, 'digest.unset'),
          ...notSet.map((clock) => `  ${say(locale, `clock.unset.${clock}`)}`),
        ]
      : []),
    ...(undelivered > 0 ? ['', say(locale, 'digest.undelivered', { count: undelivered })] : []),
    ...(publicUrl === null
      ? []
      : ['', say(locale, 'digest.desk', { address: new URL('/desk/', publicUrl).href })]),
    '',
    say(locale, 'digest.footer'),
    '',
  ];
  return {
    subject: say(locale, 'digest.subject', {
      utility: utilityName,
      on,
      overdue: overdue.length,
      today: dueToday.length,
    }),
    text: lines.join('\n'),
    something: filled.length > 0 || quiet.length > 0,
  };
}

function quietLines(quiet: readonly QuietClaim[], locale: Locale): string[] {
  if (quiet.length === 0) return [];
  const left = quiet.length - MOST_LINES;
  return [
    '',
    say(locale, 'digest.quiet'),
    ...quiet.slice(0, MOST_LINES).map(({ claimNumber, standing, flags }) =>
      say(locale, 'digest.quiet.line', {
        claimNumber,
        standing: [
          say(locale, `standing.${standing}`),
          ...flags.map((flag) => say(locale, `claim-flag.${flag}`)),
        ].join(', '),
      }),
    ),
    ...(left > 0 ? [say(locale, 'digest.more', { count: left })] : []),
  ];
}

/** What is left out of a long part is never a date to sue or a notice to a government. */
function shortened(items: readonly ListedDeadline[]): readonly ListedDeadline[] {
  if (items.length <= MOST_LINES) return items;
  const first = items.filter(({ clock }) => farOff.includes(clock));
  const others = items.filter(({ clock }) => !farOff.includes(clock));
  const kept = new Set([...first, ...others.slice(0, Math.max(0, MOST_LINES - first.length))]);
  return items.filter((item) => kept.has(item));
}

function lineOf(item: ListedDeadline, locale: Locale): string[] {
  const { clock, source } = deadlineWords(locale, item);
  const on = dayText(locale, item.dueOn);
  return [
    say(locale, 'digest.line', { on, claimNumber: item.claimNumber, clock }),
    say(locale, 'digest.line.source', { source }),
  ];
}

import type { LocalDate } from '../costs/days.ts';
import { say, type Locale } from '../words/index.ts';
import type { Deadline } from './deadline.ts';

/** A calendar day as people write it: `Mar 4, 2026`, `4 mar 2026`. The day itself, in no time zone. */
export const dayText = (locale: Locale, date: LocalDate): string =>
  new Intl.DateTimeFormat(locale === 'es' ? 'es-US' : 'en-US', {
    dateStyle: 'medium',
    timeZone: 'UTC',
  }).format(Date.parse(`${date}T00:00:00Z`));

export interface DeadlineWords {
  readonly clock: string;
  readonly state: string;
  /** What it follows, so that two dates of one name are told apart: `after the demand of Mar 4, 2026`. */
  readonly of: string;
  /** Why nobody waits for it any more, where the claim went elsewhere; else null. */
  readonly ended: string | null;
  /** How the day was found. */
  readonly rule: string;
  /**
   * Whose date it is, by which source, and whether counsel has confirmed it. What a rule asks of insurers is called their
   * target here and nowhere anything else, because it gives the utility no right.
   */
  readonly source: string;
}

/** A date in words, the same on the desk, in the calendar and in the daily letter. */
export function deadlineWords(locale: Locale, deadline: Deadline): DeadlineWords {
  const { clock, state, startedBy, rule, whose, dueOn, countedOn, metBy } = deadline;
  const start = say(locale, `clock.start.${startedBy.kind}`);
  const on = dayText(locale, startedBy.on);
  const moved =
    dueOn === countedOn
      ? []
      : [say(locale, 'clock.moved', { from: dayText(locale, countedOn), to: dayText(locale, dueOn) })];
  const named = {
    clock: say(locale, `clock.${clock}`),
    state: say(locale, `clock.state.${state}`),
    of: say(locale, 'clock.of', { start, on }),
    ended:
      metBy?.kind === 'claim-referred' || metBy?.kind === 'deadline-answered'
        ? say(locale, `clock.ended.${metBy.kind}`, { on: dayText(locale, metBy.on) })
        : null,
  };
  if (!rule)
    return {
      ...named,
      rule: [say(locale, 'clock.rule.named', { start, on }), ...moved].join('. '),
      source: say(locale, 'clock.whose.named'),
    };
  const span = say(locale, `clock.span.${rule.unit}`, { count: rule.count });
  const roll = say(locale, `clock.roll.${rule.ifNotWorking}`);
  const { citation, confirmedBy } = rule;
  const jurisdiction = rule.jurisdiction === '' ? '' : ` (${rule.jurisdiction})`;
  const by =
    whose === 'payer-target'
      ? say(locale, 'clock.whose.payer-target', { citation: citation + jurisdiction })
      : `${say(locale, 'clock.whose.utility')}. ${say(locale, 'clock.source', { citation, jurisdiction })}`;
  const confirmed = confirmedBy
    ? say(locale, 'clock.confirmed', { name: confirmedBy.name, on: dayText(locale, confirmedBy.on) })
    : say(locale, 'clock.confirm');
  return {
    ...named,
    rule: [
      rule.yearAfterLimitation
        ? say(locale, 'clock.rule.year-after', { span, start, on })
        : say(locale, 'clock.rule', { span, start, on, roll }),
      ...moved,
    ].join('. '),
    source: `${by}. ${confirmed}`,
  };
}

import { Temporal } from 'temporal-polyfill';
import { incompleteTime, localMinute, readLocalTime } from '../localTime.ts';
import { textOf, type Values } from '../nodes.ts';
import { FieldShell } from './FieldShell.tsx';
import type { PropsOf } from './props.ts';
import { useScope } from './scope.ts';

const HOUR_MS = 3_600_000;
/** What a crew says of a time to come, in hours. */
const ahead = { hours: 4, day: 24, week: 168 } as const;

/** The zone's short name at an instant, in the reader's language: EST, EDT. */
function zoneName(instant: string, zone: string, locale: string): string {
  const parts = new Intl.DateTimeFormat(`${locale}-US`, {
    timeZone: zone,
    timeZoneName: 'short',
  }).formatToParts(new Date(instant));
  return parts.find(({ type }) => type === 'timeZoneName')?.value ?? zone;
}

/** A date without its time reads as empty; it must not be taken for "not said". */
const said = ({ value, validity }: HTMLInputElement): string =>
  value === '' && validity.badInput ? incompleteTime : value;

/** Date and time in the utility's zone, which stands beside it. One touch gives "now". */
export function InstantField({ leaf, path, value, set, change, level }: PropsOf<'instant'>) {
  const { words, job } = useScope();
  const typed = textOf(value);
  const [text = ''] = typed.split('@');
  const read = typed === '' || typed === incompleteTime ? null : readLocalTime(typed, words.zone);
  const zone = zoneName(read?.ok ? read.instant : new Date().toISOString(), words.zone, words.locale);
  const notice = (input: HTMLInputElement): void => {
    if (input.validity.badInput !== (typed === incompleteTime)) set(said(input));
  };
  const now = (): void => {
    const more: Record<string, Values[string]> = { [leaf.name]: localMinute(new Date(), words.zone) };
    // Whoever says "now" is, as a rule, the one who did it.
    const by = leaf.name.replace(/At$|at$/, '');
    if (leaf.name === 'at' && textOf(level['byWorkerId']) === '' && 'byWorkerId' in level)
      more['byWorkerId'] = job.personId;
    if (by === 'dispatch.' && textOf(level['dispatch.toldByWorkerId']) === '')
      more['dispatch.toldByWorkerId'] = job.personId;
    change(more);
  };
  return (
    <FieldShell leaf={leaf} path={path} aside={zone}>
      {(described) => (
        <>
          <div class="with-button time">
            <input
              {...described}
              type="datetime-local"
              value={text === incompleteTime ? '' : text}
              onInput={(event) => set(said(event.currentTarget))}
              // A browser tells of no input while only a part of the date is there.
              onKeyUp={(event) => notice(event.currentTarget)}
              onBlur={(event) => notice(event.currentTarget)}
            />
            {!leaf.ahead && (
              <>
                <button type="button" class="plain" onClick={now} aria-describedby={`${described.id}-now`}>
                  {words.t('form.now')}
                </button>
                <span class="visually-hidden" id={`${described.id}-now`}>
                  {words.t('form.now-for')}
                </span>
              </>
            )}
          </div>
          {leaf.ahead && (
            <div class="choices" role="group" aria-label={words.t('form.ahead')}>
              {Object.entries(ahead).map(([key, hours]) => (
                <button
                  type="button"
                  class="plain"
                  key={key}
                  onClick={() => set(localMinute(new Date(Date.now() + hours * HOUR_MS), words.zone))}
                >
                  {words.t(`form.ahead.${key}`)}
                </button>
              ))}
            </div>
          )}
          {read && !read.ok && read.code === 'time-twice' && (
            <div class="choices" role="group" aria-label={words.t('form.which-of-two')}>
              {(read.offsets ?? []).map((offset) => {
                const instant = new Date(
                  Temporal.PlainDateTime.from(text).toZonedDateTime(offset).epochMilliseconds,
                ).toISOString();
                return (
                  <button type="button" class="plain" key={offset} onClick={() => set(`${text}@${offset}`)}>
                    {words.clock(instant)}
                  </button>
                );
              })}
            </div>
          )}
        </>
      )}
    </FieldShell>
  );
}

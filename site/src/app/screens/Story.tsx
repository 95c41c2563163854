import type { ComponentChildren } from 'preact';
import { formOf, type Submission } from '../../../../shared/submissions/submission.ts';
import { correctionKind } from '../../../../shared/submissions/kinds.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import { mayDo } from '../../../../shared/roles.ts';
import { useObservable } from '../core/observable.ts';
import { nameOf, people } from '../core/people.ts';
import { to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { describe, type Names, type Said } from '../form/describe.ts';
import { formOfKind, formsRead } from '../form/specs/byKind.ts';
import { headline } from './headline.ts';
import { useNames } from './names.ts';

interface Props {
  readonly history: readonly HistoryEntry[];
  /** Where the correction form finds the entry: `['strike', id]`. */
  readonly from: readonly string[];
  /** The day of an entry, where what happened has a day of its own; entries are then in the order of their days. */
  readonly days?: ReadonlyMap<string, string>;
  /** Draws the papers of an entry, where they are not shown elsewhere on the screen. */
  readonly papers?: (submission: Submission) => ComponentChildren;
}

/** Everything that was recorded, in the order it happened: who, when, delivered by whom, and what became of it. */
export function Story({ history, from, days, papers }: Props) {
  const words = useWords();
  const names = useNames(history, from, days);
  if (history.length === 0) return <p>{words.t('story.empty')}</p>;
  return (
    <ol class="story">
      {inOrder(history, days).map((entry) => {
        const { submissionId } = entry.recorded.submission;
        return (
          <StoryItem
            key={submissionId}
            names={names}
            papers={papers}
            entry={entry}
            from={from}
            day={days?.get(submissionId)}
          />
        );
      })}
    </ol>
  );
}

/** By their own days where they have one; entries of one day, and those without, keep the order they came in. */
function inOrder(history: readonly HistoryEntry[], days: Props['days']): readonly HistoryEntry[] {
  if (!days) return history;
  const dayOf = ({ recorded: { submission } }: HistoryEntry): string =>
    days.get(submission.submissionId) ?? submission.occurredAt.slice(0, 10);
  return [...history].sort((a, b) => dayOf(a).localeCompare(dayOf(b)));
}

interface ItemProps {
  readonly entry: HistoryEntry;
  readonly from: readonly string[];
  readonly day: string | undefined;
  readonly names: Names;
  readonly papers: Props['papers'];
}

function StoryItem({ entry, from, day, names, papers }: ItemProps) {
  const words = useWords();
  const current = useObservable(session);
  useObservable(people);
  useObservable(formsRead);
  const { submission, recordedAt, deliveredBy, erased } = entry.recorded;
  const line = headline(submission, words);
  const correctable =
    entry.standing === 'stands' &&
    !erased &&
    current !== null &&
    mayDo(current, [...formOf(submission).writers, 'manager']) &&
    formOfKind(formOf(submission).kind) !== null &&
    !(submission.kind === correctionKind && submission.body.replacement === null);
  return (
    <li class={`story-item ${entry.standing}`} id={`entry-${submission.submissionId}`} tabIndex={-1}>
      <p class="story-when">
        {day === undefined ? (
          <time dateTime={submission.occurredAt}>{words.when(submission.occurredAt)}</time>
        ) : (
          <time dateTime={day}>{words.day(day)}</time>
        )}
      </p>
      <div>
        <h3>
          {titleOf(submission, words.t)}
          {entry.standing !== 'stands' && <span class="tag">{words.t(`story.${entry.standing}`)}</span>}
        </h3>
        {line && <p>{line}</p>}
        <p class="small soft">
          {words.t(deliveredBy === null ? 'story.by' : 'story.by-delivered', {
            who: nameOf(submission.person.personId),
            deliveredBy: deliveredBy === null ? '' : nameOf(deliveredBy),
            when: words.when(recordedAt),
          })}
          {erased && ` ${words.t('story.erased')}`}
        </p>
        <details>
          <summary>
            {words.t('story.show')}
            <span class="visually-hidden"> {titleOf(submission, words.t)}</span>
          </summary>
          <SaidList said={saidBy(submission, words, names)} />
        </details>
        {papers?.(submission)}
        {correctable && (
          <p>
            <a href={to(['correct', ...from, submission.submissionId])}>
              {words.t('story.correct')}
              <span class="visually-hidden"> {titleOf(submission, words.t)}</span>
            </a>
          </p>
        )}
      </div>
    </li>
  );
}

function titleOf(submission: Submission, t: (key: string) => string): string {
  return submission.kind === correctionKind
    ? `${t('kind.correction')}: ${t(`kind.${submission.body.targetKind}`)}`
    : t(`kind.${submission.kind}`);
}

function saidBy(submission: Submission, words: ReturnType<typeof useWords>, names: Names): Said[] {
  const { kind } = formOf(submission);
  const spec = formOfKind(kind);
  const body = submission.kind === correctionKind ? submission.body.replacement : submission.body;
  return spec && body ? describe(kind, spec.nodes, body, words, '', names) : [];
}

export function SaidList({ said }: { readonly said: readonly Said[] }) {
  const words = useWords();
  if (said.length === 0) return <p class="soft">{words.t('story.nothing-more')}</p>;
  return (
    <dl class="said">
      {said.map((each, index) =>
        'heading' in each ? (
          <div key={index} class="said-group">
            <dt>{each.heading}</dt>
            <dd>{each.inside.length > 0 ? <SaidList said={each.inside} /> : null}</dd>
          </div>
        ) : (
          <div key={index}>
            <dt>{each.label}</dt>
            <dd>{each.text}</dd>
          </div>
        ),
      )}
    </dl>
  );
}

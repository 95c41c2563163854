import type { ComponentChildren } from 'preact';
import type { LineAuthority, StatementLine } from '../../../../shared/costs/line.ts';
import { groupedDollars } from '../../../../shared/costs/money.ts';
import { correctionKind } from '../../../../shared/submissions/kinds.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import { useObservable } from '../core/observable.ts';
import { nameOf, people } from '../core/people.ts';
import { to } from '../core/router.ts';
import { useWords, type Wording } from '../core/words.ts';

interface Props {
  readonly line: StatementLine;
  readonly strikeId: string;
  readonly history: readonly HistoryEntry[];
}

/** Why a line is what it is: the arithmetic, the hours, the rate and its paper, and the submissions it comes from. */
export function LineWhy({ line, strikeId, history }: Props) {
  const words = useWords();
  const { hoursWorked } = line;
  return (
    <dl class="said why">
      <Row name="arithmetic">{groupedDollars(line.arithmetic)}</Row>
      {hoursWorked !== null && (
        <Row name="hours">
          {words.t('claim.why.worked-and-paid', {
            worked: hoursWorked,
            paid: line.quantity,
            same: hoursWorked === line.quantity ? 'yes' : 'no',
          })}
        </Row>
      )}
      {line.time && (
        <Row name="time">
          {words.t(`packet.time.${line.time.as}`)}, × {line.time.multiplier}
        </Row>
      )}
      {line.days.length > 0 && (
        <Row name="days">
          {line.days.map(({ date, seconds }) => `${words.day(date)}: ${hoursOf(seconds)} h`).join('; ')}
        </Row>
      )}
      {line.rateUsd !== null && (
        <Row name="rate">
          {words.t(`packet.per.${line.unit}`, { rate: groupedDollars(`$${line.rateUsd}`) })}
          {line.fraction !== null &&
            line.fraction !== '0' &&
            ` ${words.t('packet.statement.fringe', { percent: percentOf(line.fraction) })}`}
        </Row>
      )}
      {line.authority && <Row name="authority">{paperOf(line.authority, words)}</Row>}
      {line.payAuthority && <Row name="pay-authority">{paperOf(line.payAuthority, words)}</Row>}
      {line.editionId !== null && (
        <Row name="edition">
          <a href={to(['rates', line.editionId])}>{line.editionId}</a>
        </Row>
      )}
      {line.dateBasis.dates.length > 0 && (
        <Row name="date">
          {words.t(`packet.date-rule.${line.dateBasis.rule}`)}:{' '}
          {line.dateBasis.dates.map(words.day).join(', ')}
        </Row>
      )}
      {line.submissionIds.length > 0 && (
        <Row name="submissions">
          <ul class="plain-list">
            {line.submissionIds.map((id) => (
              <li key={id}>
                <SourceLink submissionId={id} strikeId={strikeId} history={history} />
              </li>
            ))}
          </ul>
        </Row>
      )}
    </dl>
  );
}

function Row({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  const words = useWords();
  return (
    <div>
      <dt>{words.t(`claim.why.${name}`)}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** What was recorded, when and by whom, as a way to it; a correction of it is named beside it. */
function SourceLink({
  submissionId,
  strikeId,
  history,
}: Omit<Props, 'line'> & { readonly submissionId: string }) {
  const words = useWords();
  useObservable(people);
  const entry = history.find(({ recorded }) => recorded.submission.submissionId === submissionId);
  if (!entry) return <span class="hash">{submissionId}</span>;
  const { submission } = entry.recorded;
  const kind = submission.kind === correctionKind ? submission.body.targetKind : submission.kind;
  return (
    <>
      <a href={to(['strike', strikeId], { entry: submissionId })}>
        {words.t('claim.why.source', {
          what: words.t(`kind.${kind}`),
          when: words.when(submission.occurredAt),
          who: nameOf(submission.person.personId),
        })}
      </a>
      {entry.standing === 'corrected' && <span class="small soft"> {words.t('story.corrected')}</span>}
    </>
  );
}

const paperOf = ({ title, edition, page }: LineAuthority, words: Wording): string =>
  [title, edition, page && words.t('claim.page', { page })].filter(Boolean).join(', ');
const hoursOf = (seconds: number): string => String(Number((seconds / 3600).toFixed(2)));
const percentOf = (fraction: string): string => `${Number((Number(fraction) * 100).toFixed(4))}%`;

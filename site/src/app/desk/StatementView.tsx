import type { Problem } from '../../../../shared/problems/problem.ts';
import type { StatementLine } from '../../../../shared/costs/line.ts';
import type { Statement } from '../../../../shared/costs/statement.ts';
import type { HistoryEntry } from '../../../../shared/submissions/history.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { useWords } from '../core/words.ts';
import { LineWhy } from './LineWhy.tsx';
import { lineQuantity, lineTitle } from './lineWords.ts';
import { lineElementId, showLine } from './places.ts';

interface Props {
  readonly statement: Statement;
  readonly strikeId: string;
  /** The strike's story, to name what a line comes from. */
  readonly history: readonly HistoryEntry[];
}

/** The statement of costs, section by section. Each line opens to say why it is what it is. */
export function StatementView({ statement, strikeId, history }: Props) {
  const words = useWords();
  const about = (lineId: string): readonly Problem[] =>
    statement.problems.filter(({ path }) => path === `lines.${lineId}`);
  return (
    <>
      {!statement.complete && (
        <div class="warning">
          <p>
            <strong>{words.t('claim.incomplete')}</strong>
          </p>
        </div>
      )}
      {statement.lines.length === 0 && <p>{words.t('claim.no-lines')}</p>}
      <Remarks title={words.t('claim.problems')} remarks={statement.problems} statement={statement} />
      {statement.sections.map(({ section, subtotalCents }) => (
        <section key={section} class="statement-section">
          <h3>{words.t(`packet.section.${section}`)}</h3>
          <ul class="plain-list statement">
            {statement.lines
              .filter((line) => line.section === section)
              .map((line) => (
                <Line
                  key={line.lineId}
                  line={line}
                  strikeId={strikeId}
                  history={history}
                  problems={about(line.lineId)}
                />
              ))}
          </ul>
          <p class="sum">
            <span>{words.t('claim.subtotal')}</span>
            <span>{words.money(subtotalCents)}</span>
          </p>
        </section>
      ))}
      <p class="sum total">
        <span>{words.t('claim.total')}</span>
        <span>{words.money(statement.totalCents)}</span>
      </p>
      <Remarks title={words.t('claim.notes')} remarks={statement.notes} statement={statement} />
    </>
  );
}

interface RemarksProps {
  readonly title: string;
  readonly remarks: readonly Problem[];
  readonly statement: Statement;
}

/** Problems and notes in words; one that belongs to a line leads to it. */
function Remarks({ title, remarks, statement }: RemarksProps) {
  const words = useWords();
  if (remarks.length === 0) return null;
  const lineOf = ({ path }: Problem): StatementLine | undefined =>
    statement.lines.find(({ lineId }) => path === `lines.${lineId}`);
  return (
    <div class="notice">
      <p>
        <strong>{title}</strong>
      </p>
      <ul>
        {remarks.map((remark, index) => {
          const line = lineOf(remark);
          return (
            <li key={index}>
              {sayProblem(words.locale, remark)}{' '}
              {line && (
                <button type="button" class="link" onClick={() => showLine(line.lineId)}>
                  {lineTitle(line, words)}
                </button>
              )}
            </li>
          );
        })}
      </ul>
    </div>
  );
}

interface LineProps extends Omit<Props, 'statement'> {
  readonly line: StatementLine;
  readonly problems: readonly Problem[];
}

function Line({ line, strikeId, history, problems }: LineProps) {
  const words = useWords();
  return (
    <li>
      <details id={lineElementId(line.lineId)}>
        <summary>
          <span class="line-what">{lineTitle(line, words)}</span>
          <span class="line-quantity">{lineQuantity(line, words)}</span>
          <span class="line-amount">
            {line.amountCents === null ? words.t('claim.no-amount') : words.money(line.amountCents)}
          </span>
        </summary>
        {problems.map((found, index) => (
          <p class="line-doubt" key={index}>
            <strong>{sayProblem(words.locale, found)}</strong>
          </p>
        ))}
        <LineWhy line={line} strikeId={strikeId} history={history} />
      </details>
    </li>
  );
}

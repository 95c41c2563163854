import type { StatementLine } from '../../../../shared/costs/line.ts';
import type { Statement } from '../../../../shared/costs/statement.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { useWords, type Wording } from '../core/words.ts';

/** The statement of costs, section by section. Each line opens to say why it is what it is. */
export function StatementView({ statement }: { readonly statement: Statement }) {
  const words = useWords();
  return (
    <>
      {!statement.complete && (
        <div class="warning">
          <p>
            <strong>{words.t('claim.incomplete')}</strong>
          </p>
        </div>
      )}
      <Remarks title={words.t('claim.problems')} remarks={statement.problems} />
      {statement.sections.map(({ section, subtotalCents }) => (
        <section key={section} class="statement-section">
          <h3>{words.t(`packet.section.${section}`)}</h3>
          <ul class="plain-list statement">
            {statement.lines
              .filter((line) => line.section === section)
              .map((line) => (
                <Line key={line.lineId} line={line} />
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
      <Remarks title={words.t('claim.notes')} remarks={statement.notes} />
    </>
  );
}

function Remarks({ title, remarks }: { readonly title: string; readonly remarks: Statement['problems'] }) {
  const words = useWords();
  if (remarks.length === 0) return null;
  return (
    <div class="notice">
      <p>
        <strong>{title}</strong>
      </p>
      <ul>
        {remarks.map((remark, index) => (
          <li key={index}>{sayProblem(words.locale, remark)}</li>
        ))}
      </ul>
    </div>
  );
}

const lineTitle = ({ kind, description, item, quantity }: StatementLine, words: Wording): string =>
  words.t(`packet.line.${kind}`, { description, item, quantity: `$${quantity}` });

/** Quantity and rate; a share of other lines has no quantity of its own. */
function lineQuantity({ unit, quantity, rateUsd }: StatementLine, words: Wording): string {
  if (unit === 'usd') return '';
  const amount = words.t(`packet.unit.${unit}`, { quantity, count: Number(quantity) });
  return rateUsd === null ? amount : `${amount} × ${words.t(`packet.per.${unit}`, { rate: `$${rateUsd}` })}`;
}

function Line({ line }: { readonly line: StatementLine }) {
  const words = useWords();
  const { authority } = line;
  return (
    <li>
      <details>
        <summary>
          <span class="line-what">{lineTitle(line, words)}</span>
          <span class="line-quantity">{lineQuantity(line, words)}</span>
          <span class="line-amount">
            {line.amountCents === null ? words.t('claim.no-amount') : words.money(line.amountCents)}
          </span>
        </summary>
        <dl class="said">
          <div>
            <dt>{words.t('claim.why.arithmetic')}</dt>
            <dd>{line.arithmetic}</dd>
          </div>
          {authority && (
            <div>
              <dt>{words.t('claim.why.authority')}</dt>
              <dd>
                {[
                  authority.title,
                  authority.edition,
                  authority.page && words.t('claim.page', { page: authority.page }),
                ]
                  .filter(Boolean)
                  .join(', ')}
              </dd>
            </div>
          )}
          {line.editionId !== null && (
            <div>
              <dt>{words.t('claim.why.edition')}</dt>
              <dd>{line.editionId}</dd>
            </div>
          )}
          <div>
            <dt>{words.t('claim.why.date')}</dt>
            <dd>
              {words.t(`packet.date-rule.${line.dateBasis.rule}`)}:{' '}
              {line.dateBasis.dates.map(words.day).join(', ')}
            </dd>
          </div>
          <div>
            <dt>{words.t('claim.why.submissions')}</dt>
            <dd class="hash">{line.submissionIds.join(', ')}</dd>
          </div>
        </dl>
      </details>
    </li>
  );
}

import { useRef } from 'preact/hooks';
import { lineTitle } from '../../desk/lineWords.ts';
import { useStatement } from '../../core/records.ts';
import type { StatementLine } from '../../../../../shared/costs/line.ts';
import type { Wording } from '../../core/words.ts';
import { rowsOf, textOf, type Value, type Values } from '../nodes.ts';
import { readCents, writeCents } from '../number.ts';
import { Radios } from './choice.tsx';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

const centsOf = (row: Values, name: string): number => readCents(textOf(row[name])) ?? 0;
const untouched = (row: Values): boolean =>
  textOf(row['paidCents']).trim() === '' && textOf(row['shortCents']).trim() === '';

/** What was typed of each line, first as it was typed, then the lines of the statement of which nothing was said yet. */
function rowsWith(value: Value | undefined, lines: readonly StatementLine[]): readonly Values[] {
  const typed = rowsOf(value);
  const known = new Set(typed.map((row) => row['lineId']));
  return [...typed, ...lines.filter(({ lineId }) => !known.has(lineId)).map(({ lineId }) => ({ lineId }))];
}

/**
 * What a payment was for: the whole of it for no line in particular, or each line of the statement with what came on it
 * and what was cut. The sums stand beside while one types.
 */
export function AllocationList({ list, path, value, set, level }: ListProps) {
  const { Fields, job, words, submissionId } = useScope();
  const statement = useStatement(job.claim?.claimId ?? null);
  const lines = statement.value?.lines ?? [];
  const byLine = rowsOf(value).length > 0;
  const rows = byLine ? rowsWith(value, lines) : [];
  // Whoever looks at the other way and comes back finds what was typed.
  const before = useRef<readonly Values[]>([]);
  const choose = (way: string): void => {
    if (way === 'whole') before.current = rowsOf(value);
    set(way === 'whole' ? [] : rowsWith(before.current, lines));
  };
  const amountOf = (row: Values): number | null =>
    lines.find(({ lineId }) => lineId === row['lineId'])?.amountCents ?? null;
  const put = (index: number, next: Values): void =>
    set(rows.map((each, at) => (at === index ? next : each)));
  const restPaid = (): void =>
    set(
      rows.map((row) => {
        const amountCents = amountOf(row);
        return untouched(row) && amountCents !== null ? { ...row, paidCents: writeCents(amountCents) } : row;
      }),
    );

  return (
    <div class="rows allocation" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {lines.length === 0 && !byLine ? (
        <p>{words.t('form.no-line')}</p>
      ) : (
        <div role="radiogroup" aria-label={words.t('section.life.payment-lines')}>
          <Radios
            name={`${submissionId}-${path}-way`}
            options={[
              { value: 'whole', label: words.t('allocation.whole') },
              { value: 'by-line', label: words.t('allocation.by-line') },
            ]}
            chosen={byLine ? 'by-line' : 'whole'}
            choose={choose}
            clearable={false}
            wide
          />
        </div>
      )}
      {rows.map((row, index) => {
        const amountCents = amountOf(row);
        const at = `${path}.${index}`;
        const title = titleOf(row, lines, words);
        const leftCents = amountCents === null ? 0 : amountCents - centsOf(row, 'paidCents');
        const paidAlone =
          textOf(row['paidCents']).trim() !== '' && textOf(row['shortCents']).trim() === '' && leftCents > 0;
        return (
          <fieldset class="row allocated" key={textOf(row['lineId']) || index} id={fieldId(at)}>
            <legend>
              {index + 1}. {title}
              {amountCents !== null && (
                <span class="soft"> {words.t('allocation.asked', { amount: words.money(amountCents) })}</span>
              )}
            </legend>
            <ListProblems list={list} path={at} />
            <Fields nodes={list.item} values={row} base={at} change={(next) => put(index, next)} />
            {amountCents !== null && (untouched(row) || paidAlone) && (
              <p class="allocated-short">
                {untouched(row) && (
                  <button
                    type="button"
                    class="link"
                    onClick={() => put(index, { ...row, paidCents: writeCents(amountCents) })}
                  >
                    {words.t('allocation.paid')}
                    <span class="visually-hidden"> {title}</span>
                  </button>
                )}
                <button
                  type="button"
                  class="link"
                  onClick={() => put(index, { ...row, shortCents: writeCents(leftCents) })}
                >
                  {untouched(row)
                    ? words.t('allocation.refused')
                    : words.t('allocation.cut-rest', { amount: words.money(leftCents) })}
                  <span class="visually-hidden"> {title}</span>
                </button>
              </p>
            )}
          </fieldset>
        );
      })}
      {byLine && (
        <>
          {rows.some((row) => untouched(row) && amountOf(row) !== null) && (
            <p>
              <button type="button" class="plain" onClick={restPaid}>
                {words.t('allocation.rest-paid')}
              </button>
            </p>
          )}
          <Sums rows={rows} amountCents={readCents(textOf(level['amountCents']))} />
        </>
      )}
    </div>
  );
}

function titleOf(row: Values, lines: readonly StatementLine[], words: Wording): string {
  const line = lines.find(({ lineId }) => lineId === row['lineId']);
  return line ? lineTitle(line, words) : textOf(row['lineId']) || words.t('allocation.no-line');
}

interface SumsProps {
  readonly rows: readonly Values[];
  readonly amountCents: number | null;
}

function Sums({ rows, amountCents }: SumsProps) {
  const { words } = useScope();
  const sum = (name: string): number => rows.reduce((total, row) => total + centsOf(row, name), 0);
  const [paid, cut] = [sum('paidCents'), sum('shortCents')];
  const left = amountCents === null ? null : amountCents - paid;
  return (
    <div class={left !== null && left < 0 ? 'warning' : 'answer'} role="status">
      <dl class="figures">
        <div>
          <dt>{words.t('allocation.sum-paid')}</dt>
          <dd>{words.money(paid)}</dd>
        </div>
        <div>
          <dt>{words.t('allocation.sum-cut')}</dt>
          <dd>{words.money(cut)}</dd>
        </div>
        {left !== null && (
          <div>
            <dt>{words.t(left < 0 ? 'allocation.too-much' : 'allocation.unsaid')}</dt>
            <dd>{words.money(Math.abs(left))}</dd>
          </div>
        )}
      </dl>
    </div>
  );
}

import { deferrableAfterRepair, insteadOf, type Proof } from '../../../../../shared/outages/proofs.ts';
import type { ProcedureStep } from '../../../../../shared/procedure/steps.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { hasWords } from '../../../../../shared/words/index.ts';
import { nameOf } from '../../core/people.ts';
import { localMinute, writeLocalTime } from '../localTime.ts';
import { rowsOf, textOf, type Node, type Values } from '../nodes.ts';
import type { RecordedStep } from '../procedureSoFar.ts';
import type { FormContext } from '../spec.ts';
import { ListProblems } from './ListProblems.tsx';
import type { ListProps } from './props.ts';
import { fieldId, useScope } from './scope.ts';

/** The step of the repair at which a proof is seen. */
const stepOf: Readonly<Partial<Record<string, ProcedureStep>>> = {
  'no-leaks': 'leaks-looked-for',
  'opens-and-closes-fully': 'opened-and-closed',
  'drains-down': 'drain-down-timed',
  disinfected: 'main-disinfected',
};

/** When the repair says that this was seen, the last time after it was last closed up; null where it does not. */
function seenInRepair(proof: string, { history }: FormContext): RecordedStep | null {
  const repairs = ofKind(effectiveFacts(history).facts, 'repair').map(({ fact }) => fact.body);
  const closedUp = Math.max(
    Number.NEGATIVE_INFINITY,
    ...repairs.flatMap(({ reassembledAt }) => (reassembledAt === null ? [] : [Date.parse(reassembledAt)])),
  );
  const found = repairs
    .flatMap(({ steps }) => steps)
    .filter(({ step, doneAt }) => step === stepOf[proof] && Date.parse(doneAt) >= closedUp)
    .sort((a, b) => Date.parse(a.doneAt) - Date.parse(b.doneAt))
    .at(-1);
  return found ? { step: found.step, at: found.doneAt, byWorkerId: found.byWorkerId } : null;
}

/** What may be said of a proof: after a repair only some may be put off, and what stands in for one is passed or not. */
function resultsOf(nodes: readonly Node[], proof: Proof, { strike }: FormContext, said: string): Node[] {
  const standsIn = Object.values(insteadOf).includes(proof);
  const mayWait = !standsIn && (strike === null || deferrableAfterRepair.includes(proof));
  return nodes.map((node) =>
    node.type === 'choice' && node.name === 'result' && !mayWait && said !== 'deferred'
      ? { ...node, choices: node.choices.filter((choice) => choice !== 'deferred') }
      : node,
  );
}

/** The proofs this hydrant needs, one card each: passed, failed, or put off by name where that may be. */
export function ProofsList({ list, path, value, set }: ListProps) {
  const { Fields, job, words } = useScope();
  const rows = rowsOf(value);
  const change = (index: number, row: Values, next: Values): void => {
    const answered = textOf(row['result']) === '' && textOf(next['result']) !== '';
    // What the repair saw done is when and who; a failure is seen now.
    const seen = textOf(next['result']) === 'passed' ? seenInRepair(textOf(row['proof']), job) : null;
    const filled: Values = answered
      ? {
          ...next,
          at:
            textOf(next['at']) ||
            (seen ? writeLocalTime(seen.at, words.zone) : localMinute(new Date(), words.zone)),
          byWorkerId: textOf(next['byWorkerId']) || (seen?.byWorkerId ?? job.personId),
        }
      : next;
    set(rows.map((each, at) => (at === index ? filled : each)));
  };
  return (
    <div class="rows" id={fieldId(path)} tabIndex={-1}>
      <ListProblems list={list} path={path} />
      {rows.map((row, index) => {
        const proof = textOf(row['proof']);
        const help = `proof.${proof}.help`;
        const seen = seenInRepair(proof, job);
        return (
          <fieldset class="row" key={index} id={fieldId(`${path}.${index}`)}>
            <legend>{words.t(`proof.${proof}`)}</legend>
            {hasWords(help) && <p class="help">{words.t(help)}</p>}
            {seen && (
              <p class="recorded">
                {words.t('procedure.in-repair', { when: words.when(seen.at), who: nameOf(seen.byWorkerId) })}
              </p>
            )}
            <Fields
              nodes={resultsOf(list.item, proof as Proof, job, textOf(row['result']))}
              values={row}
              base={`${path}.${index}`}
              change={(next) => change(index, row, next)}
            />
          </fieldset>
        );
      })}
    </div>
  );
}

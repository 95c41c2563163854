import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { tighteningDoubts } from '../../../../../shared/tightening/judge.ts';
import type { ModelJoint } from '../../../../../shared/tightening/modelJoint.ts';
import { sayBackOff, sayTorque } from '../../../../../shared/tightening/say.ts';
import {
  tightenedJoint,
  type PassName,
  type TightenedJoint,
} from '../../../../../shared/tightening/tightened.ts';
import { bothUnits } from '../../../../../shared/tightening/torqueUnits.ts';
import { localDay } from '../localTime.ts';
import { encode } from '../encode.ts';
import { textOf, type List, type Node, type Values } from '../nodes.ts';
import { BoltPasses } from './BoltPasses.tsx';
import { ListProblems } from './ListProblems.tsx';
import { fieldId, problemsAt, useScope } from './scope.ts';
import { sayProblem } from '../../../../../shared/words/index.ts';

interface Props {
  readonly id: string;
  readonly list: List;
  /** The joint of the model's record; null for one that was added by hand. */
  readonly recorded: ModelJoint | null;
  readonly title: string;
  readonly path: string | null;
  /** What was said of it; null while nothing was. */
  readonly row: Values | null;
  readonly change: (next: Values) => void;
  readonly tick: (pass: PassName) => void;
  readonly done: () => void;
  readonly remove: () => void;
}

const own = ['kind', 'joint', 'bolts', 'manual', 'page'];
const used = ['torqueLbfFt', 'wrenchId', 'wrenchCalibratedOn', 'turns', 'lockLinedUp'];
const folded = ['doneAt', 'byWorkerId'];

/** The nodes of these names, looked for inside conditions as well. */
const only = (nodes: readonly Node[], names: readonly string[]): Node[] =>
  nodes.flatMap((node): Node[] => {
    if (node.type === 'when') return [{ ...node, nodes: only(node.nodes, names) }];
    return 'name' in node && names.includes(node.name) ? [node] : [];
  });

/** How this joint stands in earlier records of the strike, latest last. */
function useEarlier(joint: string): readonly TightenedJoint[] {
  const { job, submissionId } = useScope();
  return ofKind(effectiveFacts(job.history).facts, 'repair')
    .filter(({ fact }) => fact.submissionId !== submissionId)
    .flatMap(({ fact }) => fact.body.tightened ?? [])
    .filter((done) => done.joint === joint);
}

/** One joint: what its manual says, what is ticked of it, and with what it was done. */
export function JointCard({ id, list, recorded, title, path, row, change, tick, done, remove }: Props) {
  const { Fields, words, problems } = useScope();
  const kind = recorded?.kind ?? (row ? textOf(row['kind']) : 'bolts');
  const earlier = useEarlier(recorded?.joint ?? title).at(-1);
  const part = (names: readonly string[]) =>
    row && path && <Fields nodes={only(list.item, names)} values={row} base={path} change={change} />;
  const more = recorded ? ['manual', 'page', ...folded] : folded;
  return (
    <fieldset class="row joint" id={path ? fieldId(path) : undefined}>
      <legend>{title}</legend>
      {path && <ListProblems list={list} path={path} />}
      {earlier && <p class="recorded">{words.t('tightening.recorded', saidOf(earlier, words))}</p>}
      {!recorded && part(own)}
      {kind === 'back-off' ? (
        <>
          {recorded?.kind === 'back-off' && <p>{sayBackOff(recorded, words.locale)}</p>}
          {!row && (
            <button type="button" class="plain" onClick={done}>
              {words.t('tightening.nut-done')}
              <span class="visually-hidden"> {title}</span>
            </button>
          )}
        </>
      ) : (
        <BoltPasses
          id={id}
          recorded={recorded?.kind === 'bolts' ? recorded : null}
          title={title}
          row={row}
          path={path}
          tick={tick}
        />
      )}
      {part(used)}
      {row && path && (
        <>
          <Doubts list={list} row={row} recorded={recorded} />
          <details open={more.some((name) => problemsAt(problems, `${path}.${name}`).length > 0)}>
            <summary>{words.t(recorded ? 'tightening.more' : 'tightening.more-own')}</summary>
            {part(more)}
          </details>
          <button type="button" class="link" onClick={remove}>
            {words.t('tightening.not-done')}
            <span class="visually-hidden"> {title}</span>
          </button>
        </>
      )}
    </fieldset>
  );
}

/** What an earlier record says, for its sentence. */
function saidOf(earlier: TightenedJoint, words: ReturnType<typeof useScope>['words']) {
  const torque = earlier.kind === 'bolts' && earlier.torqueLbfFt;
  return {
    when: words.when(earlier.doneAt),
    who: earlier.byWorkerId,
    torque: torque ? sayTorque(bothUnits(torque, 'lbf.ft'), words) : 'none',
    passes: earlier.kind === 'bolts' ? earlier.passes.length : 0,
  };
}

interface DoubtsProps {
  readonly list: List;
  readonly row: Values;
  readonly recorded: ModelJoint | null;
}

/** Where what was typed is not what the record says. Passes that are not ticked yet can be seen to be so. */
function Doubts({ list, row, recorded }: DoubtsProps) {
  const { words } = useScope();
  const parsed = tightenedJoint.safeParse(encode(list.item, row, { zone: words.zone, nullable: [] }).body);
  const doubts = parsed.success
    ? tighteningDoubts(parsed.data, recorded, localDay(new Date(parsed.data.doneAt), words.zone)).filter(
        ({ code }) => code !== 'passes-missing',
      )
    : [];
  return (
    <div role="status">
      {doubts.length > 0 && (
        <ul class="doubts">
          {doubts.map((doubt) => (
            <li key={doubt.code}>{sayProblem(words.locale, doubt)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

import type { CapacityChange, RatedTest } from '../../../../shared/hydraulics/capacityChange.ts';
import type { HistoryEntry, RepairComparison } from '../../../../shared/hydraulics/flowTestHistory.ts';
import { historyChartSvg } from '../../../../shared/hydraulics/historyChartSvg.ts';
import { recordedHistory } from '../../../../shared/hydraulics/recordedHistory.ts';
import { sayCapacity } from '../../../../shared/hydraulics/sayCapacity.ts';
import { sayChange } from '../../../../shared/hydraulics/sayChange.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { Submission } from '../../../../shared/submissions/submission.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import type { HydrantAnswer } from '../core/records.ts';
import { useFlowTestSettings } from '../core/utility.ts';
import { useWords, type Wording } from '../core/words.ts';
import { datedTest } from '../form/flowTestTyped.ts';
import { ClassMark } from '../screens/ClassMark.tsx';
import { sayDoubt } from '../screens/sayDoubt.ts';
import { SupplyCurve } from '../screens/SupplyCurve.tsx';

interface Props {
  readonly answer: HydrantAnswer;
  /** Where a test is corrected, for whoever may. */
  readonly correct: ((submission: Submission) => string) | null;
}

/** A hydrant's flow tests: the latest rating, what became of its capacity, around each repair, and every test. */
export function FlowHistory({ answer, correct }: Props) {
  const words = useWords();
  const settings = useFlowTestSettings();
  const { flowTests, status } = answer;
  const hydrantId = answer.hydrant?.hydrantId ?? status?.hydrantId ?? '';
  const tests = flowTests.flatMap(({ submission }) =>
    submission.kind === 'flow-test' ? [datedTest(submission.submissionId, submission.body, words.zone)] : [],
  );
  const strikes = [...(status?.past ?? []), ...(status?.open ?? [])].filter(
    ({ cause }) => cause === 'strike',
  );
  const history = recordedHistory(
    tests,
    strikes.map(({ outageId, since, endedAt }) => ({
      strikeId: outageId,
      struckAt: since,
      repairedAt: endedAt,
    })),
    settings,
  );
  if (history.entries.length === 0) return null;
  const rated = history.entries.filter((entry) => entry.result && entry.result.rating.capacityGpm !== null);
  const latest = rated.at(-1);
  const compared = history.repairs.filter(({ before, after }) => before && after);
  const shown = {
    ...history,
    entries: history.entries.map((entry) => ({ ...entry, testedOn: words.day(entry.testedOn) })),
  };
  return (
    <section>
      <h2>{words.t('hydrant.flow-tests')}</h2>
      {latest && <Latest entry={latest} hydrantId={hydrantId} words={words} />}
      {history.sinceFirst && history.sinceFirst.fromTestId !== latest?.change?.fromTestId && (
        <>
          <h3>{words.t('hydrant.since-first')}</h3>
          <Change change={history.sinceFirst} words={words} />
        </>
      )}
      {rated.length > 1 && (
        // Our own drawing from numbers and catalogue words, escaped where it is made.
        <div
          class="curve"
          dangerouslySetInnerHTML={{
            __html: historyChartSvg(shown, {
              ...words,
              idPrefix: 'capacity',
              subject: hydrantId,
              bands: settings.classBands,
            }),
          }}
        />
      )}
      {compared.map((repair) => (
        <Repair
          key={repair.strikeId}
          repair={repair}
          // The latest test says the same above.
          said={isSame(repair.change, latest?.change ?? null)}
          strikes={strikes}
          words={words}
        />
      ))}
      <ul class="plain-list lines">
        {history.entries.toReversed().map((entry) => (
          <Test key={entry.testId} entry={entry} recorded={flowTests} correct={correct} words={words} />
        ))}
      </ul>
    </section>
  );
}

interface EntryProps {
  readonly entry: HistoryEntry;
  readonly words: Wording;
}

function Latest({ entry, hydrantId, words }: EntryProps & { readonly hydrantId: string }) {
  const { result, testedOn, staticPsi, residualPsi, change } = entry;
  if (!result) return null;
  return (
    <div class="answer">
      <h3>{words.t('hydrant.flow-now')}</h3>
      <p>
        {result.hydrantClass && <ClassMark hydrantClass={result.hydrantClass} />} {words.day(testedOn)}
      </p>
      <p class="answer-line">{sayCapacity(result, words)}</p>
      {change && <Change change={change} words={words} />}
      <SupplyCurve {...{ staticPsi, residualPsi, result }} idPrefix="latest-curve" subject={hydrantId} />
    </div>
  );
}

/** What became of the capacity; a loss is flagged in words before it is explained. */
function Change({ change, words }: { readonly change: CapacityChange; readonly words: Wording }) {
  const { verdict } = change;
  const flagged = verdict === 'loss' || verdict === 'possible-loss';
  const sentence = sayChange({ ...change, fromTestedOn: words.day(change.fromTestedOn) }, words);
  if (!flagged) return <p>{sentence}</p>;
  return (
    <div class="notice">
      <p>
        <span class="tag out">{words.t(`hydrant.${verdict}`)}</span>
      </p>
      <p>{sentence}</p>
    </div>
  );
}

const isSame = (one: CapacityChange | null, other: CapacityChange | null): boolean =>
  one?.fromTestId === other?.fromTestId && one?.toTestId === other?.toTestId;

interface RepairProps {
  readonly repair: RepairComparison;
  readonly said: boolean;
  readonly strikes: readonly { readonly outageId: string; readonly since: string }[];
  readonly words: Wording;
}

function Repair({ repair: { strikeId, before, after, change }, said, strikes, words }: RepairProps) {
  const struck = strikes.find(({ outageId }) => outageId === strikeId);
  return (
    <section class="around-repair">
      <h3>{words.t('hydrant.repair-compared')}</h3>
      {struck && <p class="soft">{words.t('hydrant.repair-strike', { when: words.when(struck.since) })}</p>}
      <div class="side-by-side">
        <Side title={words.t('hydrant.repair-before')} test={before} words={words} />
        <Side title={words.t('hydrant.repair-after')} test={after} words={words} />
      </div>
      {change && !said && <Change change={change} words={words} />}
    </section>
  );
}

interface SideProps {
  readonly title: string;
  readonly test: RatedTest | null;
  readonly words: Wording;
}

function Side({ title, test, words }: SideProps) {
  return (
    <div class="card">
      <h4 class="card-title">{title}</h4>
      {test ? (
        <>
          <span>{words.day(test.testedOn)}</span>
          <span class="strong">{sayCapacity(test.result, words)}</span>
          <span>{readings(test, test.result.measuredFlowGpm, words)}</span>
        </>
      ) : (
        <span>{words.t('hydrant.repair-none')}</span>
      )}
    </div>
  );
}

const readings = (
  { staticPsi, residualPsi }: Pick<HistoryEntry, 'staticPsi' | 'residualPsi'>,
  flowGpm: number,
  words: Wording,
): string =>
  words.t('hydrant.readings', {
    static: formatQuantity(staticPsi, 'psi', words),
    residual: formatQuantity(residualPsi, 'psi', words),
    flow: formatQuantity(flowGpm, 'gpm', words),
  });

interface TestProps extends EntryProps {
  readonly recorded: readonly Recorded[];
  readonly correct: Props['correct'];
}

function Test({ entry, recorded, correct, words }: TestProps) {
  const { result, testId } = entry;
  const submission = recorded.find((each) => each.submission.submissionId === testId)?.submission;
  const doubts = result?.warnings ?? [];
  return (
    <li>
      {words.when(entry.testedAt)}
      <br />
      <span class="strong">
        {result ? sayCapacity(result, words) : words.t('headline.flow-test-no-rating')}
      </span>
      {result && (
        <>
          <br />
          {readings(entry, result.measuredFlowGpm, words)}
        </>
      )}
      {doubts.length > 0 && (
        <details>
          <summary>{words.t('hydrant.doubts', { count: doubts.length })}</summary>
          <ul class="doubts">
            {doubts.map((warning, index) => (
              <li key={index}>{sayDoubt(warning, words)}</li>
            ))}
          </ul>
        </details>
      )}
      {correct && submission && (
        <>
          <br />
          <a class="row-link" href={correct(submission)}>
            {words.t('story.correct')}
            <span class="visually-hidden"> {words.when(submission.occurredAt)}</span>
          </a>
        </>
      )}
    </li>
  );
}

import { QUESTION_BELOW_PSI } from '../../../../../shared/shutMain/pressure.ts';
import type { ShutMain, ShutMainStanding } from '../../../../../shared/shutMain/standing.ts';
import { ofKind, type Effective } from '../../../../../shared/submissions/effective.ts';
import { formatQuantity } from '../../../../../shared/units/format.ts';
import { useObservable } from '../../core/observable.ts';
import { nameOf, people } from '../../core/people.ts';
import { to } from '../../core/router.ts';
import { session } from '../../core/session.ts';
import { useWords } from '../../core/words.ts';
import { mayWrite } from '../may.ts';

export interface MainShutProps {
  readonly shutMain: ShutMainStanding;
  /** The records as they stand: closings and answers. */
  readonly facts: readonly Effective[];
  /** What a new answer is about. */
  readonly query: { readonly strike?: string; readonly hydrant: string | null };
}

/** Each closing with its customers and pressure, then the question and who answered it. */
export function MainShutPart({ shutMain, facts, query }: MainShutProps) {
  useObservable(people);
  const closings = ofKind(facts, 'valve-operation');
  return (
    <>
      {shutMain.closings.map((shut) => (
        <Closing
          key={shut.submissionId}
          shut={shut}
          record={closings.find(({ fact }) => fact.submissionId === shut.submissionId) ?? null}
        />
      ))}
      <Question shutMain={shutMain} answers={ofKind(facts, 'water-quality-answer')} query={query} />
    </>
  );
}

interface ClosingProps {
  readonly shut: ShutMain;
  /** Null where this device does not have it: an answer of the server from before it gave them. */
  readonly record: Effective<'valve-operation'> | null;
}

/** Where the record is corrected: it stands with a strike or with the hydrant. */
const correctAddress = ({ fact: { subject, submissionId }, corrections }: Effective): string | null => {
  const target = corrections.at(-1)?.submission.submissionId ?? submissionId;
  if (subject.type === 'strike') return to(['correct', 'strike', subject.strikeId, target]);
  return subject.type === 'hydrant' ? to(['correct', 'hydrant', subject.hydrantId, target]) : null;
};

function Closing({ shut, record }: ClosingProps) {
  const words = useWords();
  const current = useObservable(session);
  const body = record?.fact.body;
  const said = body?.mainShut;
  const { customers = null, addresses = null, lowestPsi = null } = said ?? {};
  const correct = record && correctAddress(record);
  return (
    <div class="card">
      <p>
        {words.t(body ? 'shut-main.by' : 'shut-main.by-bare', {
          valveId: shut.valveId,
          when: words.when(shut.at),
          who: body ? nameOf(body.byWorkerId) : '',
        })}{' '}
        {shut.reopenedAt === null ? (
          <strong>{words.t('shut-main.open')}</strong>
        ) : (
          words.t('shut-main.reopened', { when: words.when(shut.reopenedAt) })
        )}
      </p>
      <dl class="said">
        <div>
          <dt>{words.t(shut.reopenedAt === null ? 'shut-main.customers' : 'shut-main.customers-had')}</dt>
          <dd>
            {customers !== null && <p>{words.t('shut-main.count', { count: customers })}</p>}
            {addresses !== null && <p class="as-typed">{addresses}</p>}
            {!shut.customersListed && (
              <p>
                <strong>{words.t('shut-main.not-listed')}</strong>{' '}
                {correct !== null && mayWrite(current, 'valve-operation') && (
                  <a href={correct}>{words.t('shut-main.list')}</a>
                )}
              </p>
            )}
          </dd>
        </div>
        <div>
          <dt>
            {words.t('shut-main.pressure', { limit: formatQuantity(QUESTION_BELOW_PSI, 'psi', words) })}
          </dt>
          <dd>
            {words.t(`value.seen.${shut.under20Psi}`)}
            {lowestPsi !== null &&
              `, ${words.t('shut-main.lowest', { psi: formatQuantity(lowestPsi, 'psi', words) })}`}
          </dd>
        </div>
      </dl>
    </div>
  );
}

interface QuestionProps {
  readonly shutMain: ShutMainStanding;
  readonly answers: readonly Effective<'water-quality-answer'>[];
  readonly query: MainShutProps['query'];
}

function Question({ shutMain: { closings, unanswered }, answers, query }: QuestionProps) {
  const words = useWords();
  const current = useObservable(session);
  const limit = formatQuantity(QUESTION_BELOW_PSI, 'psi', words);
  const open = closings.filter(({ submissionId }) => unanswered.includes(submissionId));
  const raised = closings.some(({ under20Psi }) => under20Psi !== 'no');
  if (!raised && answers.length === 0)
    return <p class="soft">{words.t('shut-main.not-needed', { limit })}</p>;
  const fell = open.some(({ under20Psi }) => under20Psi === 'yes');
  return (
    <>
      <h3>{words.t('shut-main.question')}</h3>
      {open.length > 0 && (
        <div class="warning">
          <p>
            <strong>{words.t(fell ? 'shut-main.ask' : 'shut-main.ask-unknown', { limit })}</strong>
          </p>
          <p>{words.t('shut-main.rule')}</p>
        </div>
      )}
      {answers.map(({ fact: { submissionId, body } }) => (
        <div key={submissionId}>
          <p>
            {words.t(body.position === null ? 'shut-main.answered-bare' : 'shut-main.answered', {
              who: body.answeredBy ?? '—',
              position: body.position,
              when: words.when(body.answeredAt),
              decision: words.t(`value.waterQuality.${body.decision}`),
              because: body.because,
            })}{' '}
            {words.t(`shut-main.agency.${body.agencyTold}`)}{' '}
            {body.decision === 'samples-first' && open.length > 0 && words.t('shut-main.samples-open')}
          </p>
        </div>
      ))}
      {mayWrite(current, 'water-quality-answer') && (
        <p>
          <a
            class={`button ${open.length > 0 ? 'primary' : ''}`}
            href={to(['new', 'water-quality-answer'], query)}
          >
            {words.t(answers.length > 0 ? 'shut-main.answer-again' : 'shut-main.answer')}
          </a>
        </p>
      )}
    </>
  );
}

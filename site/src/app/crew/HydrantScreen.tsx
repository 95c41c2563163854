import { useEffect } from 'preact/hooks';
import { useObservable } from '../core/observable.ts';
import { useHydrant, type HydrantAnswer } from '../core/records.ts';
import { notePlace } from '../offline/nearby.ts';
import { entries } from '../outbox/outbox.ts';
import { takesOut } from '../outbox/takesOut.ts';
import { route, to } from '../core/router.ts';
import { session } from '../core/session.ts';
import { useWords } from '../core/words.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import type { Submission } from '../../../../shared/submissions/submission.ts';
import type { HydrantStatus, Outage } from '../../../../shared/outages/hydrantStatus.ts';
import { DispatchPart } from '../screens/DispatchPart.tsx';
import { Heading } from '../screens/Heading.tsx';
import { HydrantLine } from '../screens/HydrantLine.tsx';
import { Kit } from '../screens/Kit.tsx';
import { HydrantMainShut } from '../screens/MainShut.tsx';
import { mayWrite } from '../screens/may.ts';
import { NetworkLink } from '../screens/NetworkLink.tsx';
import { Unread } from '../screens/Unread.tsx';
import { FlowHistory } from './FlowHistory.tsx';

const kinds = [
  'strike',
  'outage',
  'inspection',
  'planned-work',
  'flow-test',
  'valve-operation',
  'repair',
] as const;

/** One hydrant: whether it can be relied on, what is open, what is known of its flow, and every report about it. */
export function HydrantScreen() {
  const words = useWords();
  const hydrantId = useObservable(route).parts[1] ?? '';
  const hydrant = useHydrant(hydrantId);
  const place = hydrant.value?.hydrant ?? null;
  useEffect(() => {
    if (place) notePlace(place);
  }, [place?.hydrantId]);
  return (
    <>
      <Heading title={hydrantId}>{hydrantId}</Heading>
      <UnsentHere hydrantId={hydrantId} />
      <Unread resource={hydrant} />
      {hydrant.value?.partial && hydrant.fetchedAt !== null && (
        <p>{words.t('offline.partial', { when: words.when(new Date(hydrant.fetchedAt).toISOString()) })}</p>
      )}
      {hydrant.value && <Facts answer={hydrant.value} />}
      {hydrant.value?.status?.inService === false && (
        <DispatchPart
          of="hydrants"
          id={hydrantId}
          out
          record={to(['new', 'out-of-service-notice'], { hydrant: hydrantId })}
        />
      )}
      <HydrantMainShut hydrantId={hydrantId} answer={hydrant.value} />
      {hydrant.value?.hydrant && <NetworkLink hydrantId={hydrantId} />}
      <Actions hydrantId={hydrantId} />
      <p>
        <a
          class="button plain"
          href={to(['sheet'], { hydrant: hydrantId, strike: openStrike(hydrant.value) })}
        >
          {words.t('procedure.sheet-any')}
        </a>
      </p>
      <Kit hydrant={hydrant.value?.hydrant ?? null} />
    </>
  );
}

/** A test after a repair stands with its strike, a routine one with the hydrant. */
const correctAddress = ({ subject, submissionId }: Submission, { status, hydrant }: HydrantAnswer): string =>
  subject.type === 'strike'
    ? to(['correct', 'strike', subject.strikeId, submissionId])
    : to(['correct', 'hydrant', hydrant?.hydrantId ?? status?.hydrantId ?? '', submissionId]);

/** What the server does not know yet must not read "in service". */
function UnsentHere({ hydrantId }: { readonly hydrantId: string }) {
  const words = useWords();
  const unsent = useObservable(entries).some(
    (entry) => entry.state !== 'recorded' && takesOut(entry) && entry.draft.about.hydrantId === hydrantId,
  );
  return unsent ? <p class="warning">{words.t('offline.unsent-out')}</p> : null;
}

function Facts({ answer }: { readonly answer: HydrantAnswer }) {
  const words = useWords();
  const current = useObservable(session);
  const { hydrant, status, nearest } = answer;
  const inService = status?.inService ?? true;
  const outlets = (hydrant?.outlets ?? []).map(
    ({ kind, diameterIn }) => `${words.t(`value.outlet.${kind}`)} ${formatQuantity(diameterIn, 'in', words)}`,
  );
  const facts = [
    ['place', hydrant?.place],
    ['type', hydrant && words.t(`value.hydrantType.${hydrant.type}`)],
    ['model', hydrant?.modelId],
    ['outlets', outlets.length > 0 ? outlets.join(', ') : null],
    ['isolation', hydrant?.isolationValveId],
    ['main', hydrant?.mainSizeIn ? formatQuantity(hydrant.mainSizeIn, 'in', words) : null],
    [
      'inspected',
      status?.lastInspectedAt
        ? words.when(status.lastInspectedAt)
        : hydrant?.lastInspectedOn && words.day(hydrant.lastInspectedOn),
    ],
  ] as const;
  return (
    <>
      {!answer.partial && (
        <p>
          <span class={inService ? 'tag' : 'tag out'}>
            {words.t(inService ? 'title.in-service' : 'title.out-of-service')}
          </span>
        </p>
      )}
      {status && status.open.length > 0 && <Open status={status} hydrantId={status.hydrantId} />}
      <dl class="said">
        {facts.map(([name, value]) =>
          value ? (
            <div key={name}>
              <dt>{words.t(`hydrant.${name}`)}</dt>
              <dd>{value}</dd>
            </div>
          ) : null,
        )}
      </dl>
      <FlowHistory
        answer={answer}
        correct={mayWrite(current, 'flow-test') ? (submission) => correctAddress(submission, answer) : null}
      />
      {!inService && nearest.length > 0 && (
        <section>
          <h2>{words.t('hydrant.nearest')}</h2>
          <ul class="plain-list lines">
            {nearest.slice(0, 5).map((near) => (
              <li key={near.hydrant.hydrantId}>
                <a class="row-link" href={to(['hydrant', near.hydrant.hydrantId])}>
                  <HydrantLine
                    id={near.hydrant.hydrantId}
                    hydrant={near.hydrant}
                    inService
                    distanceFt={near.distanceFt}
                    bearing={near.bearing}
                  />
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

function Open({ status, hydrantId }: { readonly status: HydrantStatus; readonly hydrantId: string }) {
  const words = useWords();
  const current = useObservable(session);
  const actions = ({ cause, outageId }: Outage) =>
    cause === 'strike'
      ? [{ href: to(['strike', outageId]), key: 'hydrant.to-strike' }]
      : (['expected-return', 'out-of-service-notice', 'return-to-service'] as const)
          .filter((kind) => mayWrite(current, kind))
          .map((kind) => ({ href: to(['new', kind], { hydrant: hydrantId }), key: `kind.${kind}` }));
  return (
    <section>
      <h2>{words.t('hydrant.open')}</h2>
      <ul class="plain-list cards">
        {status.open.map((outage) => (
          <li class="card" key={outage.outageId}>
            <span class="card-title">{words.t(`value.outageCause.${outage.cause}`)}</span>
            <span>{words.t('form.since', { when: words.when(outage.since) })}</span>
            {outage.expectedAt && (
              <span>{words.t('hydrant.expected', { when: words.when(outage.expectedAt) })}</span>
            )}
            {outage.dispatchToldAt === null && <span class="strong">{words.t('missing.dispatch')}</span>}
            <span class="actions">
              {actions(outage).map(({ href, key }) => (
                <a class="button" href={href} key={href}>
                  {words.t(key)}
                </a>
              ))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The strike that is being repaired, so that its sheet is for how far its damage goes; null for a hydrant that works. */
const openStrike = (answer: HydrantAnswer | null): string | null =>
  answer?.status?.open.find(({ cause }) => cause === 'strike')?.outageId ?? null;

function Actions({ hydrantId }: { readonly hydrantId: string }) {
  const words = useWords();
  const current = useObservable(session);
  const open = kinds.filter((kind) => mayWrite(current, kind));
  if (open.length === 0) return null;
  return (
    <section>
      <h2>{words.t('hydrant.report')}</h2>
      <p class="actions">
        {open.map((kind) => (
          <a
            key={kind}
            class={`button ${kind === 'strike' ? 'primary' : ''}`}
            href={to(['new', kind], { hydrant: hydrantId })}
          >
            {words.t(`kind.${kind}`)}
          </a>
        ))}
      </p>
    </section>
  );
}

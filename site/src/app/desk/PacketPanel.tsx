import { useState } from 'preact/hooks';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { getBytes, postJson } from '../core/api.ts';
import { claimPath } from '../core/records.ts';
import { recordedCount } from '../core/resource.ts';
import { to } from '../core/router.ts';
import { useWords } from '../core/words.ts';
import { saveBytes } from './Evidence.tsx';

interface Built {
  readonly url: string;
  readonly demandCents: number;
  readonly pdfSha256: string;
  readonly revision: number | null;
}

type State =
  | { readonly is: 'idle' }
  | { readonly is: 'building'; readonly mode: 'preview' | 'freeze' }
  | { readonly is: 'built'; readonly built: Built }
  | { readonly is: 'failed'; readonly words: string; readonly problems: readonly Problem[] };

/** Preview, freeze and download of a claim's packet, and the demands that were sent with it. */
export function PacketPanel({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  const [state, setState] = useState<State>({ is: 'idle' });
  const [sure, setSure] = useState(false);

  const build = async (mode: 'preview' | 'freeze'): Promise<void> => {
    setSure(false);
    setState({ is: 'building', mode });
    const answer = await postJson<Built>(`${claimPath(claim.claimId)}/packet`, { mode });
    switch (answer.outcome) {
      case 'ok':
        setState({ is: 'built', built: answer.value });
        if (mode === 'freeze') recordedCount.set(recordedCount.get() + 1);
        return;
      case 'refused': {
        setState({ is: 'failed', words: answer.title, problems: answer.problems });
        return;
      }
      case 'sign-in': {
        setState({ is: 'failed', words: words.t('screen.failed.sign-in'), problems: [] });
        return;
      }
      case 'unreachable': {
        setState({ is: 'failed', words: words.t(`screen.failed.${answer.reason}`), problems: [] });
        return;
      }
    }
  };
  const busy = state.is === 'building';

  return (
    <section>
      <h2>{words.t('claim.packet')}</h2>
      <p class="actions">
        <button type="button" disabled={busy} onClick={() => void build('preview')}>
          {words.t('claim.preview')}
        </button>
        {sure ? (
          <button type="button" class="primary" disabled={busy} onClick={() => void build('freeze')}>
            {words.t('claim.freeze-sure')}
          </button>
        ) : (
          <button type="button" class="primary" disabled={busy} onClick={() => setSure(true)}>
            {words.t('claim.freeze')}
          </button>
        )}
      </p>
      {sure && <p>{words.t('claim.freeze-more')}</p>}
      <div role="status">
        {state.is === 'building' && (
          <p class="working">{words.t(state.mode === 'preview' ? 'claim.building' : 'claim.freezing')}</p>
        )}
        {state.is === 'built' && (
          <div class="good-news">
            <p>
              <strong>
                {state.built.revision === null
                  ? words.t('claim.preview-ready')
                  : words.t('claim.frozen', { revision: state.built.revision })}
              </strong>
            </p>
            <p>{words.t('claim.demand', { amount: words.money(state.built.demandCents) })}</p>
            <p>
              <a class="button" href={state.built.url} target="_blank" rel="noopener">
                {words.t('claim.open-pdf')}
              </a>
            </p>
          </div>
        )}
      </div>
      {state.is === 'failed' && (
        <div class="notice" role="alert">
          <p>
            <strong>{state.words}</strong>
          </p>
          {state.problems.length > 0 && (
            <ul>
              {state.problems.map((found, index) => (
                <li key={index}>{sayProblem(words.locale, found)}</li>
              ))}
            </ul>
          )}
        </div>
      )}
      <Packets claim={claim} />
      <Demands claim={claim} />
    </section>
  );
}

function Packets({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  const [failed, setFailed] = useState(false);
  const download = async (sha256: string, revision: number): Promise<void> => {
    const bytes = await getBytes(`/api/evidence/${sha256}`);
    setFailed(bytes === null);
    if (bytes) saveBytes(new Blob([bytes], { type: 'application/pdf' }), `${claim.claimNumber}-r${revision}`);
  };
  if (claim.packets.length === 0) return <p>{words.t('claim.no-packet')}</p>;
  return (
    <>
      <h3>{words.t('claim.packets')}</h3>
      <ul class="plain-list lines">
        {[...claim.packets].reverse().map(({ revision, frozenAt, demandCents, pdfSha256 }) => (
          <li key={revision}>
            <strong>{words.t('headline.revision', { revision, amount: words.money(demandCents) })}</strong>
            <br />
            <span class="small soft">{words.t('claim.frozen-at', { when: words.when(frozenAt) })}</span>
            <br />
            <button type="button" class="link" onClick={() => void download(pdfSha256, revision)}>
              {words.t('claim.download')}
              <span class="visually-hidden"> {words.t('claim.revision', { revision })}</span>
            </button>
          </li>
        ))}
      </ul>
      {failed && <p role="alert">{words.t('desk.not-read')}</p>}
    </>
  );
}

function Demands({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  return (
    <>
      {claim.demands.length > 0 && (
        <>
          <h3>{words.t('claim.demands')}</h3>
          <ul class="plain-list lines">
            {claim.demands.map(({ submissionId, revision, amountCents, sentOn, how }) => (
              <li key={submissionId}>
                <strong>
                  {words.t('headline.revision', { revision, amount: words.money(amountCents) })}
                </strong>
                <br />
                {words.day(sentOn)} · {words.t(`value.demandHow.${how}`)}
              </li>
            ))}
          </ul>
        </>
      )}
      {claim.packets.length > 0 && (
        <p>
          <a
            class={`button ${claim.demands.length === 0 ? 'primary' : ''}`}
            href={to(['new', 'demand-sent'], { claim: claim.claimId })}
          >
            {words.t('missing.demand.do')}
          </a>
        </p>
      )}
    </>
  );
}

import { useRef, useState } from 'preact/hooks';
import type { ClaimState } from '../../../../shared/claims/state.ts';
import { sayProblem } from '../../../../shared/words/index.ts';
import { getOriginal } from '../core/api.ts';
import { recordedCount } from '../core/resource.ts';
import { to } from '../core/router.ts';
import { readText, removeStored, writeText } from '../core/storage.ts';
import { useWords } from '../core/words.ts';
import { BeforeIssuing } from './BeforeIssuing.tsx';
import { saveBytes } from './Evidence.tsx';
import { usePacketJob } from './packetJob.ts';

const draftKey = (claimId: string): string => `packet-changes.${claimId}`;

/** Preview, freeze and download of a claim's packet, and the demands that were sent with it. */
export function PacketPanel({ claim }: { readonly claim: ClaimState }) {
  const words = useWords();
  const { state, start } = usePacketJob(claim.claimId, () => {
    removeStored(draftKey(claim.claimId));
    recordedCount.set(recordedCount.get() + 1);
  });
  const [sure, setSure] = useState(false);
  // Kept as typed, so that a reload loses nothing.
  const [changes, setChanges] = useState(() => readText(draftKey(claim.claimId)) ?? '');
  const revision = claim.packets.at(-1)?.revision ?? 0;
  const [untold, setUntold] = useState(false);
  const result = useRef<HTMLDivElement>(null);
  const told = changes.trim();
  /** The revision that stood when this was asked: the same one again means that nothing had changed. */
  const stood = useRef<number | null>(null);

  const ask = (): void => {
    const lacks = revision > 0 && told === '';
    setUntold(lacks);
    setSure(!lacks);
    if (lacks) document.getElementById('packet-changes')?.focus();
  };
  const build = async (mode: 'preview' | 'freeze'): Promise<void> => {
    setSure(false);
    stood.current = revision;
    // The button that was pressed is gone or at rest; the work goes on where its result will stand.
    result.current?.focus();
    await start(mode === 'freeze' && revision > 0 && told !== '' ? { mode, changes: told } : { mode });
  };
  const busy = state.is === 'building';
  const previewed =
    state.is === 'built' && state.built.revision === null ? (state.built.leftOut ?? null) : null;
  const again =
    state.is === 'built' && state.built.revision !== null && state.built.revision === stood.current;

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
          <button type="button" class="primary" disabled={busy} onClick={ask}>
            {words.t('claim.freeze')}
          </button>
        )}
      </p>
      {sure && (
        <div class="notice">
          <p>{words.t('claim.freeze-more')}</p>
          <BeforeIssuing claim={claim} leftOut={previewed} />
        </div>
      )}
      {revision > 0 && (
        <div class={`field ${untold ? 'invalid' : ''}`}>
          <label for="packet-changes">{words.t('claim.changes', { revision })}</label>
          {untold && (
            <p class="error" id="packet-changes-error">
              {words.t('problem.changes-needed', { revision })}
            </p>
          )}
          <span class="small soft" id="packet-changes-hint">
            {words.t('claim.changes-hint')}
          </span>
          <textarea
            id="packet-changes"
            aria-invalid={untold ? 'true' : undefined}
            aria-describedby={untold ? 'packet-changes-error packet-changes-hint' : 'packet-changes-hint'}
            rows={3}
            maxLength={4000}
            disabled={busy}
            value={changes}
            onInput={(event) => {
              setChanges(event.currentTarget.value);
              setUntold(false);
              writeText(draftKey(claim.claimId), event.currentTarget.value);
            }}
          />
        </div>
      )}
      <div role="status" ref={result} tabIndex={-1}>
        {state.is === 'building' && (
          <p class="working">
            {state.words ?? words.t('claim.building-packet')}
            {state.total > 1 && ` ${words.t('claim.progress', { done: state.done, total: state.total })}`}
          </p>
        )}
        {state.is === 'built' && (
          <div class="good-news">
            <p>
              <strong>
                {state.built.revision === null
                  ? words.t('claim.preview-ready')
                  : words.t(again ? 'claim.frozen-before' : 'claim.frozen', {
                      revision: state.built.revision,
                    })}
              </strong>
            </p>
            <p>{words.t('claim.demand', { amount: words.money(state.built.demandCents) })}</p>
            <p>
              <a class="button" href={state.built.url} target="_blank" rel="noopener">
                {words.t('claim.open-pdf')}
              </a>{' '}
              {state.built.archiveUrl !== null && (
                <a class="button" href={state.built.archiveUrl} download>
                  {words.t('claim.download-archive')}
                </a>
              )}
            </p>
            {state.built.problems.length > 0 && (
              <>
                <p>{words.t('claim.in-the-way')}</p>
                <ul>
                  {state.built.problems.map(({ message }, index) => (
                    <li key={index}>{message}</li>
                  ))}
                </ul>
              </>
            )}
            {state.built.revision === null && !sure && <BeforeIssuing claim={claim} leftOut={previewed} />}
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
  const download = async (sha256: string, name: string, type: string): Promise<void> => {
    const bytes = await getOriginal(sha256);
    setFailed(bytes === null);
    if (bytes) saveBytes(new Blob([bytes], { type }), name);
  };
  if (claim.packets.length === 0) return <p>{words.t('claim.no-packet')}</p>;
  return (
    <>
      <h3>{words.t('claim.packets')}</h3>
      <ul class="plain-list lines">
        {[...claim.packets].reverse().map((packet) => {
          const { revision, frozenAt, demandCents, pdfSha256, archiveSha256, signature, changes } = packet;
          const name = `${claim.claimNumber}-r${revision}`;
          const of = <span class="visually-hidden"> {words.t('claim.revision', { revision })}</span>;
          return (
            <li key={revision}>
              <strong>{words.t('headline.revision', { revision, amount: words.money(demandCents) })}</strong>
              <br />
              <span class="small soft">{words.t('claim.frozen-at', { when: words.when(frozenAt) })}</span>
              {changes !== undefined && (
                <>
                  <br />
                  <span class="small">{changes}</span>
                </>
              )}
              <br />
              <button
                type="button"
                class="link"
                onClick={() => void download(pdfSha256, name, 'application/pdf')}
              >
                {words.t('claim.download')}
                {of}
              </button>
              {archiveSha256 !== undefined && (
                <>
                  {' '}
                  <button
                    type="button"
                    class="link"
                    onClick={() => void download(archiveSha256, `${name}-originals`, 'application/zip')}
                  >
                    {words.t('claim.download-archive')}
                    {of}
                  </button>
                </>
              )}
              {signature !== undefined && (
                <>
                  {' '}
                  <button
                    type="button"
                    class="link"
                    onClick={() => saveBytes(new Blob([`${signature}\n`]), `${name}.pdf.jws`)}
                  >
                    {words.t('claim.download-signature')}
                    {of}
                  </button>
                </>
              )}
            </li>
          );
        })}
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

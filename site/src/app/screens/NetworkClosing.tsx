import { useState } from 'preact/hooks';
import type {
  NearbyHydrant,
  NetworkClosing as Closing,
  NetworkForHydrant,
} from '../../../../shared/network/forHydrant.ts';
import type { WatchedNode } from '../../../../shared/network/answer.ts';
import type { NearLink } from '../../../../shared/network/nearLinks.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { sayQuantityProblem } from '../../../../shared/water/say.ts';
import { postJson, type Answer } from '../core/api.ts';
import { useWords, type Wording } from '../core/words.ts';
import { sayFailed } from './sayFailed.ts';
import { Doubts } from './NetworkFlow.tsx';

function sayLink({ linkId, kind, diameterIn, lengthFt }: NearLink, words: Wording): string {
  return words.t(`network.close.${kind}`, {
    linkId,
    diameterIn: formatQuantity(diameterIn ?? 0, 'in', words),
    lengthFt: formatQuantity(Math.round(lengthFt ?? 0), 'ft', words),
  });
}
const sayWhere = ({ from, to, alongFt }: NearLink, words: Wording): string =>
  words.t(alongFt === 0 ? 'network.close.where-here' : 'network.close.where', {
    from,
    to,
    alongFt: formatQuantity(Math.round(alongFt), 'ft', words),
  });

/** As many as one looks over at once; the rest are farther away and folded up. */
const AT_ONCE = 8;

interface ChoicesProps {
  readonly links: readonly NearLink[];
  readonly chosen: readonly string[];
  readonly toggle: (linkId: string) => void;
}

function Choices({ links, chosen, toggle }: ChoicesProps) {
  const words = useWords();
  return (
    <div class="choices wide">
      {links.map((link) => (
        <label class="choice" key={link.linkId}>
          <input
            type="checkbox"
            checked={chosen.includes(link.linkId)}
            onChange={() => toggle(link.linkId)}
          />
          <span>
            {sayLink(link, words)}
            <small>
              {sayWhere(link, words)}
              {!link.open && ` · ${words.t('network.close.shut-already')}`}
            </small>
          </span>
        </label>
      ))}
    </div>
  );
}

interface Props {
  readonly answer: NetworkForHydrant;
  readonly hydrantId: string;
}

/** Chooses pipes and valves, and asks what closing them would do to the pressure here and near by. */
export function NetworkClosing({ answer, hydrantId }: Props) {
  const words = useWords();
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [state, setState] = useState<'idle' | 'empty' | 'asking' | Answer<Closing>>('idle');
  const [near, far] = [answer.links.slice(0, AT_ONCE), answer.links.slice(AT_ONCE)];
  const toggle = (linkId: string): void => {
    setChosen(chosen.includes(linkId) ? chosen.filter((one) => one !== linkId) : [...chosen, linkId]);
    // Figures of another choice must not stand beside this one.
    setState('idle');
  };
  const ask = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (chosen.length === 0) {
      setState('empty');
      return;
    }
    setState('asking');
    setState(
      await postJson<Closing>(`/api/network/${encodeURIComponent(hydrantId)}/closing`, { links: chosen }),
    );
  };
  return (
    <section>
      <h2>{words.t('network.close.title')}</h2>
      <p>{words.t('network.close.intro')}</p>
      <form onSubmit={(event) => void ask(event)}>
        <fieldset class="network-links">
          <legend>{words.t('network.close.choose')}</legend>
          <Choices links={near} chosen={chosen} toggle={toggle} />
          {far.length > 0 && (
            <details>
              <summary>{words.t('network.close.more', { count: far.length })}</summary>
              <Choices links={far} chosen={chosen} toggle={toggle} />
            </details>
          )}
        </fieldset>
        <p class="actions">
          <button type="submit" class="primary" disabled={state === 'asking'}>
            {words.t('network.close.show')}
          </button>
        </p>
      </form>
      <div role="status">
        {state === 'asking' && <p>{words.t('network.close.asking')}</p>}
        {state === 'empty' && <p class="notice">{words.t('network.close.nothing-chosen')}</p>}
        {typeof state === 'object' &&
          (state.outcome === 'ok' ? (
            <Pressures closing={state.value} hydrantId={hydrantId} />
          ) : (
            <Failed answer={state} />
          ))}
      </div>
    </section>
  );
}

function Failed({ answer }: { readonly answer: Exclude<Answer<never>, { outcome: 'ok' }> }) {
  const words = useWords();
  const lines = sayFailed(answer, words, (found) => sayQuantityProblem(found, words));
  return (
    <div class="warning">
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}

/** Where a watched hydrant stands, seen from the one that was asked for. */
function standing(
  node: WatchedNode,
  hydrantId: string,
  nearby: readonly NearbyHydrant[],
  words: Wording,
): string {
  if (node.hydrantId === hydrantId) return words.t('network.close.this');
  const found = nearby.find((one) => one.hydrantId === node.hydrantId);
  const away =
    found &&
    words.t('network.close.away', { distanceFt: formatQuantity(Math.round(found.distanceFt), 'ft', words) });
  return [found?.place, away].filter(Boolean).join(', ');
}

function Pressures({
  closing: { closing, nearby },
  hydrantId,
}: {
  readonly closing: Closing;
  readonly hydrantId: string;
}) {
  const words = useWords();
  const psi = (value: number): string => formatQuantity(value, 'psi', words);
  const title = words.t('network.close.closed', { links: closing.closed.join(', ') });
  const missing = nearby.filter(({ problem }) => problem !== null);
  return (
    <>
      <table class="network-table">
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{words.t('network.close.hydrant')}</th>
            <th scope="col">{words.t('network.close.before')}</th>
            <th scope="col">{words.t('network.close.after')}</th>
          </tr>
        </thead>
        <tbody>
          {closing.watched.map((node) => (
            <tr key={node.hydrantId ?? node.nodeId}>
              <th scope="row">
                {node.hydrantId}
                <span class="place">{standing(node, hydrantId, nearby, words)}</span>
              </th>
              <td>{psi(node.beforePsi)}</td>
              <td>
                {node.afterPsi === null ? (
                  <strong>{words.t('network.close.cut-off')}</strong>
                ) : (
                  psi(node.afterPsi)
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{words.t('network.close.cut-off-count', { count: closing.cutOffNodes })}</p>
      {missing.length > 0 && (
        <p>
          {words.t('network.close.not-in-model')} {missing.map((one) => one.hydrantId).join(', ')}
        </p>
      )}
      <Doubts warnings={closing.warnings} />
    </>
  );
}

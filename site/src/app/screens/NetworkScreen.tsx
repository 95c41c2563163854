import type { NetworkForHydrant } from '../../../../shared/network/forHydrant.ts';
import { formatNumber, formatQuantity } from '../../../../shared/units/format.ts';
import { sayQuantityProblem } from '../../../../shared/water/say.ts';
import { useResource } from '../core/resource.ts';
import { route, to } from '../core/router.ts';
import { useObservable } from '../core/observable.ts';
import { nameOf, people } from '../core/people.ts';
import { useWords } from '../core/words.ts';
import { Heading } from './Heading.tsx';
import { NetworkClosing } from './NetworkClosing.tsx';
import { NetworkFlow } from './NetworkFlow.tsx';
import { Unread } from './Unread.tsx';

export const networkPath = (hydrantId: string, strikeId: string | null): string =>
  `/api/network/${encodeURIComponent(hydrantId)}${strikeId ? `?strike=${encodeURIComponent(strikeId)}` : ''}`;

/** What the utility's network model says of one hydrant: its flow, what closing does, and how much water can be lost. */
export function NetworkScreen() {
  const words = useWords();
  const { parts, query } = useObservable(route);
  const hydrantId = parts[1] ?? '';
  const strikeId = query.get('strike');
  const network = useResource<NetworkForHydrant>(networkPath(hydrantId, strikeId));
  const title = words.t('network.title', { hydrantId });
  // A refusal says what is missing (no model, no node); the general words for a refusal would not.
  const refused = network.failed?.outcome === 'refused' ? network.failed.problems : null;
  return (
    <>
      <p class="trail">
        {strikeId ? (
          <a href={to(['strike', strikeId])}>{words.t('hydrant.to-strike')}</a>
        ) : (
          <a href={to(['hydrant', hydrantId])}>{hydrantId}</a>
        )}
      </p>
      <Heading title={title}>{title}</Heading>
      <p class="notice">{words.t('network.what-it-is')}</p>
      {refused ? (
        <div class="warning" role="status">
          {refused.map((found, index) => (
            <p key={index}>{sayQuantityProblem(found, words)}</p>
          ))}
          <p>
            <button type="button" class="plain" onClick={network.reload}>
              {words.t('network.failed.try')}
            </button>
          </p>
        </div>
      ) : (
        <Unread resource={network} />
      )}
      {!refused && network.value && (
        <>
          <NetworkFlow answer={network.value} />
          <Lost answer={network.value} />
          <NetworkClosing answer={network.value} hydrantId={hydrantId} />
          <Facts answer={network.value} />
        </>
      )}
    </>
  );
}

/** The most that can have run out; for a strike also as gallons. */
function Lost({ answer: { bound, throughLateral, lost } }: { readonly answer: NetworkForHydrant }) {
  const words = useWords();
  return (
    <section>
      <h2>{words.t('network.lost.title')}</h2>
      <p>
        {words.t('network.lost.flow', {
          flowGpm: formatQuantity(bound.flowGpm, 'gpm', words),
          through: throughLateral ? 'lateral' : 'main',
        })}
      </p>
      {lost?.held && <p>{words.t('network.lost.held')}</p>}
      {lost && lost.boundGal !== null && lost.minutes !== null && (
        <p>
          <strong>
            {words.t('network.lost.bound', {
              minutes: formatNumber(lost.minutes, words.locale, 0),
              boundGal: formatQuantity(lost.boundGal, 'gal', words),
            })}
          </strong>{' '}
          {words.t('network.lost.not-a-claim')}
        </p>
      )}
      {lost && lost.problems.length > 0 && (
        <>
          <p>{words.t('network.lost.open')}</p>
          <ul>
            {lost.problems.map((found, index) => (
              <li key={index}>{sayQuantityProblem(found, words)}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** Which model it is and what it supposes: without this no figure of it says anything. */
function Facts({ answer: { model, available } }: { readonly answer: NetworkForHydrant }) {
  const words = useWords();
  const { at } = available;
  useObservable(people);
  const facts = [
    ['datedOn', words.day(model.datedOn)],
    ['file', model.sourceFile],
    [
      'loaded',
      words.t('network.facts.loaded-by', {
        when: words.when(model.loadedAt),
        who: nameOf(model.loadedBy),
        edition: model.edition,
      }),
    ],
    ['hour', formatNumber(model.hour, words.locale, 1)],
    ['demand', formatQuantity(model.demandGpm, 'gpm', words)],
    ['size', words.t('network.facts.size-of', { nodes: model.nodes, links: model.links })],
    [
      'node',
      at.distanceFt === null
        ? words.t('network.facts.node-named', { nodeId: at.nodeId })
        : words.t('network.facts.node-near', {
            nodeId: at.nodeId,
            distanceFt: formatQuantity(Math.round(at.distanceFt), 'ft', words),
          }),
    ],
  ] as const;
  return (
    <section>
      <h2>{words.t('network.facts.title')}</h2>
      <dl class="said">
        {facts.map(([name, value]) => (
          <div key={name}>
            <dt>{words.t(`network.facts.${name}`)}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <p class="small soft">{words.t('network.private')}</p>
    </section>
  );
}

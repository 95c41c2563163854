import { barrelOf, procedureFor, scopes, type Scope } from '../../../../shared/procedure/procedureFor.ts';
import { hydrantTypes, type Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { useObservable } from '../core/observable.ts';
import { useHydrant, useStrike } from '../core/records.ts';
import { route, to } from '../core/router.ts';
import { utility } from '../core/utility.ts';
import { useWords } from '../core/words.ts';
import { procedureSoFar } from '../form/procedureSoFar.ts';
import { useModel } from '../form/view/useModel.ts';
import { Heading } from '../screens/Heading.tsx';
import { SheetHours } from './SheetHours.tsx';
import { SheetJoints } from './SheetJoints.tsx';
import { SheetSteps } from './SheetSteps.tsx';
import './sheet.css';

/** The two that have a procedure of their own: what a sheet for any hydrant is chosen from. */
const barrels = ['dry-barrel', 'wet-barrel'] as const satisfies readonly Hydrant['type'][];

const isScope = (value: string | null): value is Scope =>
  (scopes as readonly (string | null)[]).includes(value);
const isType = (value: string | null): value is Hydrant['type'] =>
  (hydrantTypes as readonly (string | null)[]).includes(value);

/**
 * The procedure on paper, for a truck with no phone: the same steps in the same order with boxes for time and name, and
 * the model's torques. `#/sheet?strike=…&hydrant=…&scope=…`; without a hydrant `type=…` gives a sheet for any of its type.
 */
export function SheetScreen() {
  const words = useWords();
  const { query } = useObservable(route);
  const strike = useStrike(query.get('strike'));
  const hydrantId = query.get('hydrant') ?? strike.value?.strike.hydrantId ?? null;
  const found = useHydrant(hydrantId);
  const hydrant = found.value?.hydrant ?? strike.value?.hydrant ?? null;
  const { model } = useModel(hydrant?.modelId ?? null);
  const facts = useObservable(utility);

  const asked = query.get('type');
  const type = hydrant?.type ?? (isType(asked) ? asked : 'dry-barrel');
  const history = strike.value?.history.map(({ recorded }) => recorded) ?? [];
  const wanted = query.get('scope');
  const scope = isScope(wanted)
    ? wanted
    : procedureSoFar({ history, hydrant, around: [] }, {}, '', words.zone).scope;
  const steps = procedureFor(type, scope);
  const title = `${words.t('sheet.title')}: ${words.t('procedure.title', {
    scope: words.t(`scope.${scope}`),
    barrel: words.t(`barrel.${barrelOf(type)}`),
  })}`;
  const footer = words.t('sheet.footer', {
    utility: facts?.name ?? '',
    hydrant: hydrantId === null ? words.t('sheet.any-hydrant') : words.t('sheet.one-hydrant', { hydrantId }),
    scope: words.t(`scope.${scope}`),
  });
  const ground = scope !== 'breakaway';
  return (
    <article class="sheet">
      <Heading title={title}>{title}</Heading>
      <div class="no-print">
        <p class="lead">{words.t('sheet.lead')}</p>
        <p class="actions">
          <button type="button" class="primary" onClick={() => window.print()}>
            {words.t('sheet.print')}
          </button>
        </p>
        {hydrant === null && (
          <nav aria-label={words.t('hydrant.type')}>
            <p class="actions">
              {barrels.map((each) => (
                <a
                  class={`button ${each === type ? 'primary' : 'plain'}`}
                  key={each}
                  href={to(['sheet'], { strike: query.get('strike'), hydrant: hydrantId, type: each, scope })}
                  aria-current={each === type ? 'page' : undefined}
                >
                  {words.t(`value.hydrantType.${each}`)}
                </a>
              ))}
            </p>
          </nav>
        )}
        <nav aria-label={words.t('sheet.which')}>
          <ul class="plain-list lines">
            {scopes.map((each) => (
              <li key={each}>
                <a
                  class="row-link"
                  href={to(['sheet'], {
                    strike: query.get('strike'),
                    hydrant: hydrantId,
                    type: asked,
                    scope: each,
                  })}
                  aria-current={each === scope ? 'page' : undefined}
                >
                  {words.t(`scope.${each}`)}
                </a>
              </li>
            ))}
          </ul>
        </nav>
      </div>
      <dl class="sheet-head">
        <Blank label={words.t('sheet.hydrant')} value={hydrantId} />
        <Blank label={words.t('sheet.date')} />
        <Blank label={words.t('sheet.crew')} />
        <Blank label={words.t('sheet.place')} value={hydrant?.place ?? null} wide />
        <Blank label={words.t('sheet.model')} value={model?.name ?? words.t('sheet.model-none')} wide />
        <Blank label={words.t('sheet.valve')} value={hydrant?.isolationValveId ?? null} room />
        {ground && <Blank label={words.t('sheet.ticket')} />}
        {ground && <Blank label={words.t('sheet.trench')} />}
        {ground && <Blank label={words.t('sheet.competent')} />}
      </dl>
      <p class="sheet-decides">
        <strong>{words.t('procedure.decides')}</strong> {words.t('sheet.again')}
      </p>
      <SheetSteps steps={steps} type={type} model={model} running={footer} />
      {model && <SheetJoints model={model} />}
      <SheetHours />
      <p class="sheet-small">{words.t('sheet.sources')}</p>
      <p class="sheet-small">{words.t('sheet.printed', { when: words.when(new Date().toISOString()) })}</p>
    </article>
  );
}

interface BlankProps {
  readonly label: string;
  readonly value?: string | null;
  readonly wide?: boolean;
  /** Room to write behind what is known. */
  readonly room?: boolean;
}

/** A label over a line to write on, with what is known already on it. */
function Blank({ label, value = null, wide = false, room = false }: BlankProps) {
  return (
    <div class={wide ? 'wide' : ''}>
      <dt>{label}</dt>
      <dd>
        {value}
        {room && value !== null ? ' / ' : ''}
      </dd>
    </div>
  );
}

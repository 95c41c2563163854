import type { FieldTest, NetworkForHydrant } from '../../../../shared/network/forHydrant.ts';
import { sayFieldAndModel } from '../../../../shared/network/say.ts';
import { formatQuantity } from '../../../../shared/units/format.ts';
import { useWords, type Wording } from '../core/words.ts';

const flow = (gpm: number, words: Wording): string =>
  gpm > 0 ? formatQuantity(gpm, 'gpm', words) : words.t('network.flow.none');

/** The field test's capacity, or why it has none that stands beside the model's. */
function capacity(field: FieldTest, residualPsi: number, words: Wording): string {
  if (field.capacityGpm === null) return words.t('network.flow.no-capacity');
  const said = flow(field.capacityGpm, words);
  return field.ratedAtPsi === residualPsi
    ? said
    : `${said} (${words.t('network.flow.other-residual', { residualPsi: formatQuantity(field.ratedAtPsi, 'psi', words) })})`;
}

/** Available flow by the model, beside the latest field test. */
export function NetworkFlow({ answer: { available, field } }: { readonly answer: NetworkForHydrant }) {
  const words = useWords();
  const psi = (value: number): string => formatQuantity(value, 'psi', words);
  const { staticPsi, residualPsi, flowGpm, atTestFlowPsi, lowest, warnings } = available;
  const rows = [
    {
      name: words.t('network.flow.static'),
      model: psi(staticPsi),
      measured: field && psi(field.staticPsi),
    },
    {
      name: words.t('network.flow.at-residual', { residualPsi: psi(residualPsi) }),
      model: flow(flowGpm, words),
      measured: field && capacity(field, residualPsi, words),
    },
    ...(field && atTestFlowPsi !== null
      ? [
          {
            name: words.t('network.flow.at-test', {
              flowGpm: formatQuantity(field.measuredFlowGpm, 'gpm', words),
            }),
            model: atTestFlowPsi >= 0 ? psi(atTestFlowPsi) : words.t('network.flow.cannot'),
            measured: psi(field.residualPsi),
          },
        ]
      : []),
  ];
  return (
    <section>
      <h2>{words.t('network.flow.title')}</h2>
      <table class="network-table">
        <caption class="visually-hidden">{words.t('network.flow.caption')}</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{words.t('network.flow.model')}</th>
            {field && <th scope="col">{words.t('network.flow.field')}</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ name, model, measured }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{model}</td>
              {field && <td>{measured}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      {field ? (
        <>
          {field.comparison && <p>{sayFieldAndModel(field.comparison, words)}</p>}
          <p>{words.t('network.flow.tested', { when: words.when(field.testedAt) })}</p>
        </>
      ) : (
        <p>{words.t('network.flow.no-test')}</p>
      )}
      {lowest && flowGpm > 0 && (
        <p>
          {words.t('network.flow.lowest', {
            nodeId: lowest.nodeId,
            pressurePsi: psi(lowest.psi),
            count: lowest.belowResidual,
            residualPsi: psi(residualPsi),
          })}
        </p>
      )}
      <Doubts warnings={warnings} />
    </section>
  );
}

/** What the solver itself doubts of its figures. */
export function Doubts({ warnings }: { readonly warnings: readonly string[] }) {
  const words = useWords();
  if (warnings.length === 0) return null;
  return (
    <div class="warning">
      <p>
        <strong>{words.t('network.doubts')}</strong>
      </p>
      <ul>
        {warnings.map((warning) => (
          <li key={warning}>{words.t(`network.warning.${warning}`)}</li>
        ))}
      </ul>
    </div>
  );
}

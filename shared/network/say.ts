import { formatNumber, formatQuantity, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type {
  AvailableFlowAnswer,
  ClosingAnswer,
  NetworkAnswer,
  SeenNode,
  WaterBoundAnswer,
} from './answer.ts';
import type { FieldAndModel } from './compare.ts';

const nameOf = ({ nodeId, hydrantId }: SeenNode, { locale }: Reader): string =>
  hydrantId === null
    ? say(locale, 'network.node', { nodeId })
    : say(locale, 'network.hydrant', { hydrantId, nodeId });

function sayAvailable(answer: AvailableFlowAnswer, reader: Reader): string[] {
  const { locale } = reader;
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  const { at, staticPsi, residualPsi, flowGpm, atTestFlowPsi, lowest } = answer;
  const node = nameOf(at, reader);
  const figures = { node, static: psi(staticPsi), residual: psi(residualPsi) };
  const lines = [
    flowGpm > 0
      ? say(locale, 'network.said.available', { ...figures, flow: formatQuantity(flowGpm, 'gpm', reader) })
      : say(locale, 'network.said.nothing', figures),
  ];
  if (atTestFlowPsi !== null)
    lines.push(
      atTestFlowPsi >= 0
        ? say(locale, 'network.said.at-test', { pressure: psi(atTestFlowPsi) })
        : say(locale, 'network.said.beyond-test'),
    );
  if (lowest)
    lines.push(
      say(locale, 'network.said.lowest', {
        pressure: psi(lowest.psi),
        nodeId: lowest.nodeId,
        count: lowest.belowResidual,
        residual: psi(residualPsi),
      }),
    );
  return lines;
}

function sayClosing({ closed, watched, cutOffNodes }: ClosingAnswer, reader: Reader): string[] {
  const { locale } = reader;
  const psi = (value: number): string => formatQuantity(value, 'psi', reader);
  return [
    say(locale, 'network.said.closed', { links: closed.join(', ') }),
    ...watched.map((node) =>
      node.afterPsi === null
        ? say(locale, 'network.said.cut-off', { node: nameOf(node, reader), before: psi(node.beforePsi) })
        : say(locale, 'network.said.before-after', {
            node: nameOf(node, reader),
            before: psi(node.beforePsi),
            after: psi(node.afterPsi),
          }),
    ),
    say(locale, 'network.said.cut-off-count', { count: cutOffNodes }),
  ];
}

const sayBound = ({ at, flowGpm }: WaterBoundAnswer, reader: Reader): string[] => [
  say(reader.locale, 'network.said.bound', {
    node: nameOf(at, reader),
    flow: formatQuantity(flowGpm, 'gpm', reader),
  }),
];

/** What a model answered, in sentences, with what EPANET itself doubts of it. */
export function sayNetwork(answer: NetworkAnswer, reader: Reader): string[] {
  const said =
    answer.ask === 'available-flow'
      ? sayAvailable(answer, reader)
      : answer.ask === 'closing'
        ? sayClosing(answer, reader)
        : sayBound(answer, reader);
  return [...said, ...answer.warnings.map((warning) => say(reader.locale, `network.warning.${warning}`))];
}

/** The model's figure beside the field's, and what a difference asks for. */
export function sayFieldAndModel(
  { fieldGpm, modelGpm, fraction, verdict }: FieldAndModel,
  reader: Reader,
): string {
  return say(reader.locale, `network.said.field-${verdict}`, {
    field: formatQuantity(fieldGpm, 'gpm', reader),
    model: formatQuantity(modelGpm, 'gpm', reader),
    percent: formatNumber(Math.abs(fraction) * 100, reader.locale, 0),
  });
}

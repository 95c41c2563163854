import { OutOfRange } from '../../../../../shared/hydraulics/card.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import type { Reader } from '../../../../../shared/units/format.ts';
import { testBefore, waterLostInputFrom } from '../../../../../shared/water/fromStrike.ts';
import { waterLostInput } from '../../../../../shared/water/input.ts';
import { recordWaterLost } from '../../../../../shared/water/record.ts';
import { decode } from '../decode.ts';
import { localDay } from '../localTime.ts';
import type { Leaf, Node, Values } from '../nodes.ts';
import { textOf } from '../nodes.ts';
import { firstInstant, type FormContext, type FormSpec } from '../spec.ts';
import { answered, note } from './parts.ts';

/** Everything but the main valve's answer: where that held, no water was lost and nothing else is asked. */
const flowed = (values: Values): boolean => textOf(values['question.found.mainValve']) !== 'holds';

const quantity = (name: string, unit: Extract<Leaf, { type: 'quantity' }>['unit'], words?: string): Leaf => ({
  type: 'quantity',
  name,
  unit,
  ...(words ? { words } : {}),
});
/** A height or a distance that is guessed in feet, or in meters, and kept in inches as the formulas have it. */
const reach = (name: string, words?: string): Leaf => ({
  type: 'quantity',
  name,
  unit: 'in',
  typedIn: 'ft',
  ...(words ? { words } : {}),
});
const instant = (name: string, words?: string): Leaf => ({
  type: 'instant',
  name,
  ...(words ? { words } : {}),
});
const kept = (name: string): Leaf => ({ type: 'kept', name });

const valve: Node = {
  type: 'section',
  id: 'water.valve',
  nodes: [
    {
      type: 'choice',
      name: 'question.found.mainValve',
      words: 'field.strike.found.mainValve',
      list: 'mainValve',
      choices: ['holds', 'does-not-hold', 'unknown'],
      whenBlank: 'unknown',
    },
    kept('question.hydrantType'),
  ],
};

const seen: Node = {
  type: 'section',
  id: 'water.seen',
  nodes: [
    {
      type: 'choice',
      name: 'question.found.flow',
      words: 'field.strike.found.flow',
      list: 'flow',
      choices: ['none', 'leak', 'jet', 'full-bore', 'unknown'],
      whenBlank: 'unknown',
    },
    {
      type: 'when',
      test: answered('question.found.flow', 'leak', 'jet', 'full-bore'),
      nodes: [
        quantity('question.found.openingDiameterIn', 'in', 'field.strike.found.openingDiameterIn'),
        reach('question.found.jetHeightIn', 'field.strike.found.jetHeightIn'),
        reach('question.found.throwDistanceIn'),
        reach('question.found.throwDropIn'),
      ],
    },
    kept('question.found.seenAccuracyFraction'),
  ],
};

const times: Node = {
  type: 'section',
  id: 'water.times',
  nodes: [
    instant('question.times.struckAt', 'field.strike.struckAt'),
    {
      type: 'choice',
      name: 'question.times.struckAtBasis',
      words: 'field.strike.struckAtBasis',
      list: 'struckAtBasis',
      choices: ['witnessed', 'reported', 'bounded', 'unknown'],
      whenBlank: 'unknown',
    },
    {
      type: 'when',
      test: (values) =>
        textOf(values['question.times.struckAt']) === '' ||
        !answered('question.times.struckAtBasis', 'witnessed', 'reported')(values),
      nodes: [
        instant('question.times.lastSeenSoundAt', 'field.strike.lastSeenSoundAt'),
        instant('question.times.firstCallAt'),
      ],
    },
    instant('question.times.waterShutAt', 'field.strike.waterShutAt'),
    {
      type: 'when',
      test: (values) => textOf(values['question.times.waterShutAt']) === '',
      nodes: [instant('question.times.lastSeenFlowingAt'), instant('question.times.firstSeenShutAt')],
    },
  ],
};

const pipes: Node = {
  type: 'section',
  id: 'water.pipes',
  folded: true,
  nodes: [
    quantity('question.staticPsi', 'psi'),
    quantity('question.lateral.diameterIn', 'in'),
    quantity('question.lateral.lengthFt', 'ft'),
    { type: 'number', name: 'question.lateral.roughness', words: 'field.water-lost.roughness' },
    { type: 'number', name: 'question.lateral.minorLossK' },
    quantity('question.main.diameterIn', 'in'),
    quantity('question.main.lengthFt', 'ft'),
    { type: 'number', name: 'question.main.roughness', words: 'field.water-lost.roughness' },
  ],
};

const test: Node = {
  type: 'section',
  id: 'water.test',
  folded: true,
  nodes: [
    quantity('question.flowTest.staticPsi', 'psi', 'field.flow-test.staticPsi'),
    quantity('question.flowTest.residualPsi', 'psi', 'field.flow-test.residualPsi'),
    quantity('question.flowTest.flowGpm', 'gpm'),
    { type: 'date', name: 'question.flowTest.testedOn' },
    quantity('question.modelBoundGpm', 'gpm'),
  ],
};

const meter: Node = {
  type: 'section',
  id: 'water.meter',
  folded: true,
  nodes: [quantity('question.metered.waterGal', 'gal'), kept('question.metered.accuracyFraction')],
};

/** Nothing is asked here: the estimate is shown, before it is chosen from. */
const answer: Node = { type: 'section', id: 'water.answer', nodes: [] };

const figure: Node = {
  type: 'section',
  id: 'water.figure',
  nodes: [
    {
      type: 'choice',
      name: 'question.choice.figure',
      list: 'waterFigure',
      choices: ['low', 'best', 'high', 'own'],
      whenBlank: 'low',
    },
    {
      type: 'when',
      test: answered('question.choice.figure', 'own'),
      nodes: [quantity('question.choice.waterGal', 'gal')],
    },
    {
      type: 'when',
      test: answered('question.choice.figure', 'best', 'high', 'own'),
      nodes: [{ type: 'text', name: 'question.choice.reason', lines: 2, required: false }],
    },
  ],
};

const challenge: Node = {
  type: 'section',
  id: 'water.challenge',
  folded: true,
  nodes: [
    { type: 'text', name: 'challengeAnswer.text', lines: 2 },
    { type: 'person', name: 'challengeAnswer.byWorkerId', prefilled: true },
  ],
};

const used: Node = {
  type: 'section',
  id: 'water.used',
  folded: true,
  nodes: [
    {
      type: 'list',
      name: 'question.used',
      optional: true,
      atMost: 20,
      blank: { use: 'flushing' },
      item: [
        { type: 'choice', name: 'use', list: 'waterUse', choices: ['flushing', 'flow-test'], required: true },
        quantity('waterGal', 'gal'),
        quantity('flowGpm', 'gpm'),
        { type: 'number', name: 'minutes' },
      ],
    },
  ],
};

/** A record of before is a figure with a sentence; it can be put right as that, or answered anew. */
const asFigure: Node = {
  type: 'when',
  test: answered('_from', 'figure'),
  absent: true,
  nodes: [
    { type: 'choice', name: '_from', list: 'waterFrom', choices: ['seen', 'figure'] },
    { type: 'quantity', name: 'waterLostGal', unit: 'gal', required: true },
    {
      type: 'choice',
      name: 'method',
      list: 'waterMethod',
      choices: ['metered', 'flow-times-duration', 'none-lost', 'other'],
      required: true,
    },
    { type: 'text', name: 'basis', lines: 2, required: true },
    { type: 'instant', name: 'flowingFrom' },
    { type: 'instant', name: 'flowingTo' },
  ],
};

/** What is known when the form is opened: the strike's own facts, the hydrant's lateral, its last test before. */
function known({ history, hydrant, strike, flowTests, zone }: FormContext): Values {
  const reports = ofKind(effectiveFacts(history).facts, 'strike').map(({ fact }) => fact.body);
  const report = reports.find(({ found }) => found !== null) ?? reports[0];
  if (!report) return {};
  const struckAt = strike?.struckAt ?? report.struckAt;
  const question = waterLostInputFrom(
    { ...report, struckAt },
    {
      hydrant,
      flowTest: testBefore(effectiveFacts(flowTests).facts, struckAt, (at) => localDay(new Date(at), zone)),
      waterShutAt: strike?.waterShutAt ?? null,
    },
  );
  return decode(waterLostSpec.nodes, { question }, zone);
}

/** Fills in what the question comes to. One that cannot be answered is left to the checks, which say why. */
function complete(body: Record<string, unknown>, reader: Reader): Record<string, unknown> {
  if (body['question'] === undefined) return body;
  const unanswered = {
    waterLostGal: 0,
    method: 'other',
    basis: '-',
    flowingFrom: null,
    flowingTo: null,
    ...body,
  };
  const parsed = waterLostInput.safeParse(body['question']);
  if (!parsed.success) return unanswered;
  try {
    return { ...body, ...recordWaterLost(parsed.data, reader) };
  } catch (error) {
    if (error instanceof OutOfRange) return unanswered;
    throw error;
  }
}

/** Water lost, from what a crew could see to the figure that is billed: somebody stands for it by name. */
export const waterLostSpec: FormSpec = {
  kind: 'water-lost',
  nullable: [
    'question.lateral',
    'question.main',
    'question.flowTest',
    'question.metered',
    'question.choice',
    'challengeAnswer',
  ],
  nodes: [
    asFigure,
    {
      type: 'when',
      test: ({ _from }) => _from !== 'figure',
      absent: true,
      nodes: [
        valve,
        { type: 'when', test: flowed, nodes: [seen, times, pipes, test, meter] },
        answer,
        { type: 'when', test: flowed, nodes: [figure, challenge] },
        used,
      ],
    },
    {
      type: 'section',
      id: 'water.who',
      nodes: [{ type: 'person', name: 'byWorkerId', words: 'field.byWorkerId', required: true }, note],
    },
  ],
  blank: (context) => ({
    ...known(context),
    _from: 'seen',
    'question.choice.figure': 'low',
    'challengeAnswer.byWorkerId': context.personId,
    byWorkerId: context.personId,
  }),
  steering: ({ question }) => ({ _from: question === undefined || question === null ? 'figure' : 'seen' }),
  complete,
  occurredAt: firstInstant('flowingTo', 'flowingFrom'),
};

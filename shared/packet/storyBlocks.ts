import type { Block } from './blocks.ts';
import { exceptionBlocks } from './exceptionBlocks.ts';
import { mapBlocks } from './mapBlocks.ts';
import { sayHydrant, sayWorker, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** Hydrant, damage, repair and return: the account, with what was passed by or put off said as plainly as the rest. */
export function accountBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  return [
    { type: 'heading', level: 1, text: say('packet.account.title'), newPage: true },
    { type: 'heading', level: 2, text: say('packet.account.hydrant') },
    { type: 'pairs', pairs: hydrantPairs(content, reader) },
    ...mapBlocks(content, reader),
    { type: 'heading', level: 2, text: say('packet.account.damage') },
    ...damage(content, reader),
    { type: 'heading', level: 2, text: say('packet.account.repair') },
    ...repair(content, reader),
    ...exceptionBlocks(content, reader),
  ];
}

function hydrantPairs(content: PacketContent, reader: PacketReader): { label: string; value: string }[] {
  const { hydrant } = content;
  const { say } = reader;
  const { position, lastInspection, lastFlowTest } = hydrant;
  const pairs: [string, string | null][] = [
    [say('packet.hydrant.number'), hydrant.hydrantId],
    [say('packet.hydrant.place'), hydrant.place],
    [
      say('packet.hydrant.position'),
      position && `${position.latitudeDeg.toFixed(5)}, ${position.longitudeDeg.toFixed(5)} (WGS 84)`,
    ],
    [say('packet.hydrant.type'), say(`value.hydrantType.${hydrant.type}`)],
    [say('packet.hydrant.model'), hydrant.modelId],
    [say('packet.hydrant.installed'), hydrant.installedOn && reader.day(hydrant.installedOn)],
    [
      say('packet.hydrant.last-inspection'),
      lastInspection &&
        `${say(`value.inspectionResult.${lastInspection.result}`)}, ${reader.date(lastInspection.inspectedAt)}`,
    ],
    [
      say('packet.hydrant.last-flow-test'),
      lastFlowTest &&
        [
          lastFlowTest.hydrantClass && say('hydraulics.class', { hydrantClass: lastFlowTest.hydrantClass }),
          reader.date(lastFlowTest.testedAt),
        ]
          .filter(Boolean)
          .join(', '),
    ],
  ];
  return pairs.map(([label, value]) => ({ label, value: value ?? say('packet.not-recorded') }));
}

const laterQuestions = [
  ['barrelStands', 'barrelStands'],
  ['ground', 'ground'],
  ['main', 'belowGrade'],
  ['checkValve', 'checkValve'],
] as const;

function damage({ strike }: PacketContent, { say }: PacketReader): Block[] {
  if (strike.found.length === 0) return [{ type: 'paragraph', text: say('packet.account.nothing-found') }];
  return strike.found.map((found, index): Block => {
    const pairs: [string, string][] = [
      ['flow', `value.flow.${found.flow}`],
      ['breakawayFlangeParted', `value.seen.${found.breakawayFlangeParted}`],
      ['stemCouplingParted', `value.seen.${found.stemCouplingParted}`],
      ['nozzleSection', `value.soundness.${found.nozzleSection}`],
      ['lowerBarrel', `value.soundness.${found.lowerBarrel}`],
      ['belowGrade', `value.belowGrade.${found.belowGrade}`],
      ['mainValve', `value.mainValve.${found.mainValve}`],
      ['isolationValve', `value.isolationValve.${found.isolationValve}`],
      // Asked since; a report of before, and one in which nobody could say, has no line for them.
      ...laterQuestions.flatMap(([field, list]): [string, string][] =>
        found[field] === undefined ? [] : [[field, `value.${list}.${found[field]}`]],
      ),
    ];
    const several =
      strike.found.length > 1 ? [{ label: say('packet.account.report'), value: String(index + 1) }] : [];
    return {
      type: 'pairs',
      pairs: [
        ...several,
        ...pairs.map(([field, value]) => ({ label: say(`packet.found.${field}`), value: say(value) })),
      ],
    };
  });
}

function repair(content: PacketContent, reader: PacketReader): Block[] {
  const { strike } = content;
  const { say } = reader;
  const paragraphs: string[] = [];
  if (strike.damage.length > 0)
    paragraphs.push(
      say('packet.account.scope', {
        scope: strike.damage.map((code) => say(`value.damage.${code}`)).join(', '),
      }),
    );
  if (strike.repairedAt)
    paragraphs.push(say('packet.account.completed', { at: reader.dateTime(strike.repairedAt) }));
  paragraphs.push(
    strike.returnedAt
      ? say('packet.account.returned', {
          hydrant: sayHydrant(content, reader),
          at: reader.dateTime(strike.returnedAt),
        })
      : say('packet.letter.not-returned'),
  );
  if (strike.steps.length > 0) paragraphs.push(say('packet.account.steps', { count: strike.steps.length }));
  const fitted = content.statement.lines
    .filter(({ kind }) => kind === 'stock' || kind === 'invoiced-part')
    .map(({ description, item, quantity }) => `${quantity} × ${description} (${item})`);
  const parts: Block[] =
    fitted.length === 0
      ? []
      : [
          { type: 'paragraph', text: say('packet.account.parts') },
          { type: 'list', items: fitted },
        ];
  return [...paragraphs.map((text): Block => ({ type: 'paragraph', text })), ...parts];
}

/** From the strike to the return, every recorded moment in local time and in UTC. */
export function timelineBlocks({ timeline, timeZone }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  return [
    { type: 'heading', level: 1, text: say('packet.timeline.title'), newPage: true },
    { type: 'paragraph', look: 'small', text: say('packet.timeline.zone', { timeZone }) },
    {
      type: 'table',
      dense: true,
      summary: say('packet.timeline.title'),
      columns: [
        { label: say('packet.timeline.local'), align: 'left', share: 0.25 },
        { label: say('packet.timeline.utc'), align: 'left', share: 0.21 },
        { label: say('packet.timeline.what'), align: 'left', share: 0.34 },
        { label: say('packet.account.by'), align: 'left', share: 0.2 },
      ],
      rows: timeline.map((event) => ({
        cells: [
          reader.dateTime(event.at),
          reader.utc(event.at),
          sayEvent(event, reader),
          event.by === null ? '' : sayWorker(event.by),
        ],
      })),
    },
  ];
}

function sayEvent(
  { code, detail }: PacketContent['timeline'][number],
  { say, dateTime }: PacketReader,
): string {
  return say(`packet.event.${code}`, {
    valveId: detail.valveId ?? '',
    step: detail.step ? say(`step.${detail.step}`) : '',
    proof: detail.proof ? say(`proof.${detail.proof}`) : '',
    result: detail.result ? say(`value.proofResult.${detail.result}`) : '',
    source: detail.source ? say(`value.reportSource.${detail.source}`) : '',
    basis: detail.basis ?? 'unknown',
    waterShut: detail.waterShut ?? 'unknown',
    takesEffect: detail.takesEffect === false ? 'no' : 'yes',
    waitingFor: detail.waitingFor ? say(`value.waitingFor.${detail.waitingFor}`) : '',
    known: detail.expectedAt ? 'yes' : 'no',
    at: detail.expectedAt ? dateTime(detail.expectedAt) : '',
  });
}

import { standingBreaches } from '../procedure/breaches.ts';
import type { Block } from './blocks.ts';
import { sayWorker, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** What did not go by the book and stands, what was put off, and apart from them what a correction took from the record. */
export function exceptionBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  const { strike } = content;
  const blocks: Block[] = [];
  const standing = standingBreaches(strike.breaches);
  if (standing.length > 0 || strike.deferred.length > 0) {
    blocks.push({ type: 'heading', level: 2, text: say('packet.account.exceptions') });
    for (const breach of standing)
      blocks.push({ type: 'paragraph', look: 'caution', text: sayBreach(breach, reader) });
    for (const { proof, reason, by } of strike.deferred)
      blocks.push({
        type: 'paragraph',
        look: 'caution',
        text: say('packet.account.deferred', {
          proof: say(`proof.${proof}`),
          by: by.name === null ? sayWorker(by) : `${by.name} (${sayWorker(by)})`,
          reason,
        }),
      });
  }
  return [...blocks, ...correctedBlocks(content, reader)];
}

type PacketBreach = PacketContent['strike']['breaches'][number];

const sayBreach = (
  { code = 'take-down-before-safe', by, at, missing }: PacketBreach,
  { say, dateTime }: PacketReader,
): string =>
  `${say(`breach.${code}`, {
    byWorkerId: sayWorker(by),
    missing: missing.map((step) => say(`step.${step}`)).join(', '),
  })} ${dateTime(at)}.`;

/** What the record once showed of hold points and does not any more, by correction: so that the history hides nothing. */
function correctedBlocks({ strike }: PacketContent, reader: PacketReader): Block[] {
  const { say } = reader;
  // By hand: this also runs in the browsers of those who verify, some older than `Map.groupBy`.
  const byCorrection = new Map<string, PacketBreach[]>();
  for (const breach of strike.breaches) {
    const key = breach.corrected?.submissionId;
    if (key !== undefined) byCorrection.set(key, [...(byCorrection.get(key) ?? []), breach]);
  }
  const told = [...byCorrection.values()].flatMap((breaches): Block[] => {
    const corrected = breaches[0]?.corrected;
    if (!corrected) return [];
    const { at, by, withdrawn, reason } = corrected;
    const texts = [
      ...breaches.map((breach) => say('packet.account.recorded-as', { breach: sayBreach(breach, reader) })),
      say('packet.account.corrected', {
        how: withdrawn ? 'withdrawn' : 'corrected',
        at: reader.dateTime(at),
        by: sayWorker(by),
        reason: reason.replaceAll(/\s*\n\s*/g, ' '),
      }),
    ];
    return texts.map((text) => ({ type: 'paragraph', text }));
  });
  return told.length === 0
    ? []
    : [
        { type: 'heading', level: 2, text: say('packet.account.corrected-title') },
        { type: 'paragraph', look: 'small', text: say('packet.account.corrected-why') },
        ...told,
      ];
}

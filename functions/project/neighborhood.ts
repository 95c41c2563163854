import { mentioningStream, mentionPrefix, partitions } from '../../shared/projections/items.ts';
import { mentionedStreams } from '../../shared/projections/mentions.ts';
import type { Stream } from '../../shared/submissions/envelope.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import { inTurns, NeighborhoodTooLarge, type ProjectorDeps } from './deps.ts';

/** Streams that affect each other: strikes, those they were ever linked to, their hydrants, those hydrants' strikes. */
export interface Neighborhood {
  readonly streams: ReadonlySet<Stream>;
  readonly recorded: readonly Recorded[];
}

/** More streams than any hydrant's history has; a limit so that one wrong record cannot make a run endless. */
const mostStreams = 2000;

/**
 * Reads the closed neighbourhood of a strike's or hydrant's stream, every stream with strong consistency and without
 * personal fields. It follows what streams name, and what is listed as naming them.
 */
export async function readNeighborhood(
  { ledger, projections }: Pick<ProjectorDeps, 'ledger' | 'projections'>,
  start: Stream,
): Promise<Neighborhood> {
  const streams = new Set<Stream>([start]);
  const recorded: Recorded[] = [];
  let reached: Stream[] = [start];
  while (reached.length > 0) {
    const found = await inTurns(reached, async (stream) => {
      const [own, naming] = await Promise.all([
        ledger.readStream(stream, { personal: false }),
        projections.list(partitions.mention, mentionPrefix(stream)),
      ]);
      recorded.push(...own);
      return [...mentionedStreams(own), ...naming.map(({ key }) => mentioningStream(key))];
    });
    reached = [...new Set(found.flat())].filter((stream) => !streams.has(stream));
    for (const stream of reached) streams.add(stream);
    if (streams.size > mostStreams)
      throw new NeighborhoodTooLarge(`${start} is tied to more than ${mostStreams} streams`);
  }
  return { streams, recorded };
}

import { nearMap } from '../public/nearMap.ts';
import { formatQuantity } from '../units/format.ts';
import type { Block } from './blocks.ts';
import { mapLabels } from './mapLabels.ts';
import { sayHydrant, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** A sketch of where the struck hydrant stands among its neighbours; nothing where nobody knows where that is. */
export function mapBlocks(content: PacketContent, reader: PacketReader): Block[] {
  const { position, near, hydrantId } = content.hydrant;
  if (!position || near.length === 0) return [];
  const { say } = reader;
  const map = nearMap(
    position,
    near.map((other) => ({ position: other, distanceFt: other.distanceFt })),
  );
  if (!map) return [];
  return [
    { type: 'heading', level: 2, text: say('packet.map.title') },
    {
      type: 'map',
      map,
      labels: mapLabels(map, {
        rings: map.rings.map(({ feet }) => formatQuantity(feet, 'ft', reader)),
        hydrants: near.map((other) => other.hydrantId),
        centre: hydrantId ?? sayHydrant(content, reader),
        north: say('packet.map.north'),
      }),
      alt: say('packet.map.alt', { count: near.length }),
    },
    { type: 'paragraph', look: 'small', text: say('packet.map.note') },
  ];
}

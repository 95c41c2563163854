import { nearMap } from '../public/nearMap.ts';
import { formatQuantity } from '../units/format.ts';
import type { Block } from './blocks.ts';
import { sayHydrant, type PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** How near to the sketch's edge a word may come, in its units. */
const EDGE = 14;

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
      labels: [
        ...map.rings.flatMap(({ feet, radius }) => {
          const x = map.centre + map.labelsAlong.x * radius;
          const y = map.centre + map.labelsAlong.y * radius;
          const fits = Math.min(x, y) > EDGE && x < map.size - 4 * EDGE && y < map.size - EDGE;
          return fits
            ? [{ text: formatQuantity(feet, 'ft', reader), x: x - EDGE, y: y + 4, strong: false }]
            : [];
        }),
        ...map.hydrants.map(({ index, x, y }) => ({
          text: near[index]?.hydrantId ?? '',
          x: x + 10,
          y: y + 4,
          strong: false,
        })),
        {
          text: hydrantId ?? sayHydrant(content, reader),
          x: map.centre + 20,
          y: map.centre + 5,
          strong: true,
        },
        { text: say('packet.map.north'), x: map.size - 28, y: 66, strong: true },
      ],
      alt: say('packet.map.alt', { count: near.length }),
    },
    { type: 'paragraph', look: 'small', text: say('packet.map.note') },
  ];
}

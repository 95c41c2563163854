import { pack, unpack } from '../layers/packed.ts';
import type { Streets } from './streets.ts';

/** A street network as the bytes of a file. */
export const streetsToBytes = ({ shapes, shapeFrom, fromNode, toNode, nodes, snapFt }: Streets): Uint8Array =>
  pack({ shapes, shapeFrom, fromNode, toNode }, { version: 1, nodes, snapFt });

/** @throws PackedDamaged for bytes that are no street network */
export function streetsFromBytes(bytes: Uint8Array): Streets {
  const { array, number } = unpack(bytes);
  return {
    shapes: array('shapes', 'Int32'),
    shapeFrom: array('shapeFrom', 'Uint32'),
    fromNode: array('fromNode', 'Uint32'),
    toNode: array('toNode', 'Uint32'),
    nodes: number('nodes'),
    snapFt: number('snapFt'),
  };
}

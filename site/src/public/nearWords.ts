import type { PublicOutOfService, PublicSnapshot } from '../../../shared/public/snapshot.ts';
import type { WordKey } from '../../../shared/words/index.ts';

/** Why no hydrant is named as the nearest to one that is out. */
export function noneNear({ inventory }: PublicSnapshot, { position }: PublicOutOfService): WordKey {
  if (inventory === null) return 'public.nearest.no-inventory';
  if (position === null) return 'public.nearest.none';
  return inventory.hydrants > inventory.outOfService ? 'public.nearest.far' : 'public.nearest.nobody';
}

/** Whether distances are along streets or straight lines, where no single one says so. */
export const distancesBy = ({ fireCover }: PublicSnapshot): WordKey =>
  fireCover?.by === 'streets' ? 'cover.by.streets' : 'public.nearest.line';

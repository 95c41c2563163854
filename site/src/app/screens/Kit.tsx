import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { lazy } from '../form/view/Lazy.tsx';

export interface KitProps {
  /** Null where a strike's hydrant is not known yet: then nobody knows what to bring. */
  readonly hydrant: Hydrant | null;
}

const Part = lazy<{ readonly hydrant: Hydrant }>(async () => (await import('./stock/KitPart.tsx')).KitPart);

/** What to bring for a hydrant: its model's wrenches, lubricants and kit, and the shelf that has it. */
export const Kit = ({ hydrant }: KitProps) => (hydrant ? <Part hydrant={hydrant} /> : null);

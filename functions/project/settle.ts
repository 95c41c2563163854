import { setTimeout as wait } from 'node:timers/promises';
import type { Item, Partition } from '../../shared/projections/items.ts';
import { inTurns, ProjectionContended, type ProjectorDeps } from './deps.ts';

export interface Target {
  readonly partition: Partition;
  readonly key: string;
}

/** What one reading of the ledger says: every target it decides, and the items that stand. A target without an item is to be removed. */
export interface Reading {
  readonly targets: readonly Target[];
  readonly items: readonly Item[];
}

const mostTries = 12;
/** The pause before another try is drawn from 0 to this, doubled each time up to a second. */
const firstPauseMs = 25;
const longestPauseMs = 1000;

const nameOf = ({ partition, key }: Target): string => `${partition}\n${key}`;

/**
 * Writes what a reading says, so that an older reading never replaces a newer one (docs/decisions/0012): the versions
 * of all targets are read before the ledger is, every target is written, also when its value stays the same, and a
 * write that finds another version starts everything again.
 */
export async function settle(deps: ProjectorDeps, read: () => Promise<Reading>): Promise<void> {
  const { projections, pause = wait } = deps;
  // Only to learn which targets there are; what it says of them is not used.
  let { targets } = await read();
  for (let tries = 1; tries <= mostTries; tries += 1) {
    const versions = new Map(
      await inTurns(targets, async (target): Promise<[string, number]> => [
        nameOf(target),
        await projections.versionOf(target.partition, target.key),
      ]),
    );
    const reading = await read();
    targets = reading.targets;
    // The reading may know more targets than there were versions read for; then it comes too late to be used.
    if (targets.every((target) => versions.has(nameOf(target)))) {
      const items = new Map(reading.items.map((item) => [nameOf(item), item]));
      const write = (target: Target): Promise<boolean> => {
        const { partition, key } = target;
        const expected = versions.get(nameOf(target)) ?? 0;
        const item = items.get(nameOf(target));
        return item === undefined
          ? projections.remove(partition, key, expected)
          : projections.put(partition, key, item.value, expected);
      };
      // The first in order alone: whoever loses it stops before it makes anybody else lose the others.
      const [first, ...rest] = [...targets].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
      if (first === undefined) return;
      if ((await write(first)) && (await inTurns(rest, write)).every(Boolean)) {
        deps.kept?.(targets);
        return;
      }
      await pause(Math.random() * Math.min(longestPauseMs, firstPauseMs * 2 ** tries));
    }
  }
  throw new ProjectionContended(`${targets.map(nameOf).slice(0, 3).join(', ')} stayed contended`);
}

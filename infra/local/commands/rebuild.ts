import { rebuild, type Difference } from '../../../functions/project/rebuild.ts';
import { openOperatorStores } from '../operatorStores.ts';
import { RefusedStart } from '../refusedStart.ts';
import { command, tell } from '../terminal.ts';

/**
 * `npm run rebuild`: computes everything kept for reading anew from the facts and prints each difference. Exit 1 when
 * something differs; with `--write` it is put right, and exit 1 only when something differs still.
 */
await command(async () => {
  const given = process.argv.slice(2);
  const unknown = given.find((option) => option !== '--write');
  if (unknown !== undefined) throw new RefusedStart('command.rebuild-option', { option: unknown });
  const write = given.includes('--write');

  const opened = await openOperatorStores(process.env);
  let right = false;
  try {
    const { facts, items, differences, left } = await rebuild(opened.projector, { write });
    right = left.length === 0;
    tell('command.rebuild-computed', { facts, items });
    for (const difference of differences) print(difference);
    if (differences.length === 0) tell('command.rebuild-same');
    else if (!write) tell('command.rebuild-differs', { count: left.length });
    else if (right) tell('command.rebuild-repaired', { count: differences.length });
    else {
      tell('command.rebuild-left', { count: left.length });
      for (const difference of left) print(difference);
    }
  } finally {
    await opened.close(right);
  }
  if (!right) process.exitCode = 1;
});

function print({ kind, partition, key, path }: Difference): void {
  // A mark's key is two streams with a line feed between them.
  const shown = key.split('\n').join(' <- ');
  tell('command.rebuild-difference', { kind, partition, key: shown, path: path === '' ? 'none' : path });
}

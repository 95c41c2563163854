import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fact, onStrike } from '../support/submissions.ts';
import type { BenchRow } from './row.ts';

const WARM_UP = 40;
const HOW_MANY = 400;
/** A crew room's worth of phones that empty their outboxes at the same time. */
const AT_ONCE = 8;

/** Strike reports, each a stream of its own, on a town's hydrants. */
const submissionAt = (index: number): string =>
  JSON.stringify(fact('strike', index + 1, onStrike(index + 1), { hydrantId: `H-${index % 400}` }));

/** Posts to one address, so many at once; answers how many a second were answered. */
async function perSecond(
  origin: string,
  token: string,
  from: number,
  count: number,
  status: number,
): Promise<number> {
  const bodies = Array.from({ length: count }, (_, index) => submissionAt(from + index));
  const began = performance.now();
  const send = async (): Promise<void> => {
    for (let body = bodies.shift(); body !== undefined; body = bodies.shift()) {
      const response = await fetch(`${origin}/api/submissions`, {
        method: 'POST',
        headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
        body,
      });
      await response.arrayBuffer();
      if (response.status !== status) throw new Error(`answered ${response.status} in place of ${status}`);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, send));
  return count / ((performance.now() - began) / 1000);
}

/**
 * Submissions a second through HTTP, sign-in check and all, to the embedded store on disk, projecting going on behind; beside
 * handlers that do nothing behind the same gateway.
 */
export async function bench(): Promise<readonly BenchRow[]> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'support', 'httpServer.ts')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const ended = once(child, 'exit');
  try {
    const [line] = (await once(createInterface({ input: child.stdout }), 'line')) as [string];
    const { real, empty, token } = JSON.parse(line) as { real: string; empty: string; token: string };
    await perSecond(empty, token, 0, WARM_UP, 201);
    const besides = await perSecond(empty, token, 0, HOW_MANY, 201);
    await perSecond(real, token, 0, WARM_UP, 201);
    const accepted = await perSecond(real, token, WARM_UP, HOW_MANY, 201);
    const repeated = await perSecond(real, token, WARM_UP, HOW_MANY, 200);
    const beside = { name: 'empty handler, same server', value: besides };
    return [
      { name: 'submissions through HTTP, accepted', value: accepted, unit: '/s', beside },
      { name: 'submissions through HTTP, repeated', value: repeated, unit: '/s', beside },
    ];
  } finally {
    child.stdin.end();
    await ended;
  }
}

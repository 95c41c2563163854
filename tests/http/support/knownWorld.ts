import type { Role } from '../../../shared/roles.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';
import { fact, onClaim, onStrike, uuid } from '../../support/submissions.ts';
import { watchedStores } from './watchedStores.ts';
import { testWorld, type World } from './world.ts';

export interface KnownWorld {
  readonly world: World;
  /** Writes of any kind since the world was made. */
  readonly written: () => readonly string[];
  /** As the issuer's, but made once a minute: signing takes longer than what is tested. */
  readonly tokenFor: (role: Role) => Promise<string>;
}

/** A world in which strike 1, claim 2 and hydrant H-1 are known, so that what is asked of them is not simply missing. */
export async function knownWorld(): Promise<KnownWorld> {
  const { stores, objects, tried } = watchedStores();
  const world = await testWorld({ stores, objects });
  for (const one of [
    fact('strike', 1, onStrike(1), { ...sampleBodies.strike, hydrantId: 'H-1' }),
    fact('claim-opened', 2, onClaim(2), { ...sampleBodies['claim-opened'], strikeId: uuid(1) }),
  ]) {
    const { status, body } = await world.submit('manager', one);
    if (status !== 201) throw new Error(`${one.kind} was not taken: ${JSON.stringify(body)}`);
  }
  const known = tried.length;
  const tokens = new Map<Role, { readonly madeAt: number; readonly token: Promise<string> }>();
  const tokenFor = (role: Role): Promise<string> => {
    const kept = tokens.get(role);
    if (kept && Date.now() - kept.madeAt < 60_000) return kept.token;
    const token = world.issuer.tokenFor(role);
    tokens.set(role, { madeAt: Date.now(), token });
    return token;
  };
  return { world, written: () => tried.slice(known), tokenFor };
}

/** How many cases a fuzz test draws: `FUZZ_RUNS`, or what every run of the tests can afford. */
export function fuzzRuns({ usual, seed }: { readonly usual: number; readonly seed: number }): {
  readonly runs: { readonly numRuns: number; readonly seed: number };
  readonly time: { readonly timeout: number };
} {
  const numRuns = Number(process.env['FUZZ_RUNS'] ?? usual);
  if (!Number.isInteger(numRuns) || numRuns < 1)
    throw new Error(`FUZZ_RUNS is a whole number from 1, not ${process.env['FUZZ_RUNS']}`);
  return {
    runs: { numRuns, seed: Number(process.env['FUZZ_SEED'] ?? seed) },
    time: { timeout: Math.max(30_000, numRuns * 60) },
  };
}

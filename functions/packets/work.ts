import { workOf, type Work } from '../../shared/costs/work.ts';
import { project } from '../../shared/projections/project.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { streamOf } from '../../shared/submissions/envelope.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { notFound } from '../http/refused.ts';
import { readNeighborhood } from '../project/neighborhood.ts';
import type { PacketsDeps } from './deps.ts';

/**
 * What a strike's statement is computed from, apart from the rates, so that the desk can ask what another edition of
 * the rate book would make of it. Read with strong consistency; trials are left out.
 */
export async function strikeWork(deps: PacketsDeps, strikeId: string): Promise<Work> {
  const { recorded } = await readNeighborhood(deps, streamOf({ type: 'strike', strikeId }));
  const real = withoutTrials(recorded);
  // Which reports are one strike does not hang on the hydrant's type.
  const strike = project(real, () => 'unknown').strikes.find(({ memberIds }) => memberIds.includes(strikeId));
  if (!strike) return notFound('no-such-strike');
  const { facts } = effectiveFacts(real);
  const own = facts.filter(
    ({ fact: { subject } }) => subject.type === 'strike' && strike.memberIds.includes(subject.strikeId),
  );
  return workOf(own, deps.settings.timeZone, null);
}

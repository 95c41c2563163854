import {
  hydrantOfSubject,
  hydrantSubject,
  strikeOfSubject,
  type NearbyHydrant,
  type NoticeFacts,
  type NoticeSubject,
} from '../../shared/dispatch/notice.ts';
import { noticeFacts, noticePosition } from '../../shared/dispatch/facts.ts';
import { maybeReported, nearbyHydrant, nearbyInService } from '../../shared/dispatch/nearby.ts';
import type { NextNotice } from '../../shared/dispatch/next.ts';
import { referenceOf } from '../../shared/dispatch/reference.ts';
import type { Position } from '../../shared/nearest/sphere.ts';
import type { FlowTestFact } from '../../shared/public/ratings.ts';
import type { StrikeState } from '../../shared/strikes/state.ts';
import { effectiveFacts, ofKind } from '../../shared/submissions/effective.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import { inTurns } from '../project/deps.ts';
import { flowTestStreams } from '../records/flowTests.ts';
import { searchTree } from '../stores/inventory/searchTree.ts';
import type { NoticeDeps } from './deps.ts';

/** What a message says, read for it. Only where one is made: the whole state is looked at for what stands near by. */
export async function factsFor(deps: NoticeDeps, next: NextNotice): Promise<NoticeFacts> {
  const { subject, what, outageIds } = next;
  const hydrantId = hydrantOfSubject(subject);
  const [stock, status, strikes] = await Promise.all([
    deps.inventory.current(),
    hydrantId === null ? null : deps.current.hydrant(hydrantId),
    strikesOf(deps, outageIds),
  ]);
  const hydrant = hydrantId === null ? null : (stock?.byId.get(hydrantId) ?? null);
  const ownStrike = strikeOfSubject(subject);
  const reported = ownStrike === null ? strikes[0] : await deps.current.strike(ownStrike);
  const position = noticePosition(hydrant, reported ?? null);
  return noticeFacts({
    next,
    hydrantId,
    hydrant,
    status,
    reported: reported ?? null,
    nearest: what === 'out' && position ? await nearestTo(deps, position, hydrantId) : [],
    maybe:
      what === 'out' && hydrantId === null && position && stock
        ? maybeReported(position, searchTree(stock))
        : [],
    instead: await insteadOf(deps, next, strikes),
  });
}

/** Strikes among the outages, by the id that each goes by today. */
async function strikesOf(
  { current }: NoticeDeps,
  outageIds: readonly string[],
): Promise<readonly StrikeState[]> {
  const found = await Promise.all(outageIds.map((outageId) => current.strike(outageId)));
  return found.filter((strike) => strike !== null);
}

async function nearestTo(
  deps: NoticeDeps,
  point: Position,
  self: string | null,
): Promise<readonly NearbyHydrant[]> {
  const { current, inventory, settings } = deps;
  const stock = await inventory.current();
  if (!stock) return [];
  const [statuses, strikes] = await Promise.all([current.hydrants(), current.strikes()]);
  const found = nearbyInService({
    point,
    self,
    count: settings.dispatchMessages?.nearest ?? 0,
    index: searchTree(stock),
    statuses,
    strikes,
  });
  return inTurns(found, async (neighbor) =>
    nearbyHydrant(neighbor, await flowTestsOf(deps, neighbor.hydrant.hydrantId), settings),
  );
}

async function flowTestsOf(deps: NoticeDeps, hydrantId: string): Promise<readonly FlowTestFact[]> {
  const { current, ledger } = deps;
  const streams = await flowTestStreams(current, hydrantId, await current.hydrant(hydrantId));
  const recorded = await Promise.all(streams.map((stream) => ledger.readStream(stream, { personal: false })));
  const { facts } = effectiveFacts(withoutTrials(recorded.flat()));
  return ofKind(facts, 'flow-test')
    .map(({ fact }) => fact)
    .filter(({ body }) => body.residualHydrantId === hydrantId);
}

/** When a report named the wrong hydrant: the right one for those who were told of the wrong one, and the other way round. */
async function insteadOf(
  deps: NoticeDeps,
  { subject, what, outageIds }: NextNotice,
  strikes: readonly StrikeState[],
): Promise<NoticeFacts['instead']> {
  if (what === 'back') return null;
  if (what === 'corrected') {
    const [other] = strikes
      .filter(({ returnedAt }) => returnedAt === null)
      .flatMap(({ strikeId, hydrantIds }) => hydrantIds.map((hydrantId) => ({ strikeId, hydrantId })))
      .filter(({ hydrantId }) => hydrantSubject(hydrantId) !== subject);
    if (!other) return null;
    const own = hydrantSubject(other.hydrantId);
    const told = (await deps.notices.of(own)).at(-1)?.value;
    // The message about the other one may not be made yet; its reference follows from what it is of.
    const reference = told?.what === 'out' ? told.reference : referenceOf(own, other.strikeId);
    return { hydrantId: other.hydrantId, reference };
  }
  const named = new Set(strikes.flatMap(({ hydrantIds }) => hydrantIds).map(hydrantSubject));
  for (const outageId of outageIds)
    for (const other of await deps.notices.subjectsOf(outageId)) {
      if (other === subject || named.has(other)) continue;
      const told = await saidOut(deps, other, outageId);
      if (told) return { hydrantId: hydrantOfSubject(other), reference: told };
    }
  return null;
}

/** The reference under which dispatch was sent this outage of another hydrant or place, if it was. */
async function saidOut(
  { notices }: NoticeDeps,
  subject: NoticeSubject,
  outageId: string,
): Promise<string | null> {
  const told = (await notices.of(subject))
    .map(({ value }) => value)
    .filter(({ what, held, outageIds }) => what === 'out' && held === null && outageIds.includes(outageId));
  return told.at(-1)?.reference ?? null;
}

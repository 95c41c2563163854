import { expect } from 'vitest';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { readPacketTotals } from '../../infra/local/packetTotals.ts';
import { demoCase, demoClaim, type DemoClaim } from '../support/demoClaim.ts';
import { type packetWorld } from '../support/packetWorld.ts';
import { attachmentsOf, withPdf } from '../support/pdf.ts';

export type World = Awaited<ReturnType<typeof packetWorld>>;

/** The demo's own figures, read once from its statement: what is tested here is what becomes of them. */
export const { statement } = demoCase(demoClaim());
export const total = statement.totalCents;
export const part = Math.floor(total / 2);
export const changes = 'Another figure for the water.';
export const water = statement.sections.find(({ section }) => section === 'water')!.subtotalCents;

export const attachedTo = async (pdf: Uint8Array): Promise<string> =>
  new Map(await withPdf(pdf, attachmentsOf)).get('packet.json')!;

/** A later fact of the same strike: another figure for the water lost. */
export function withLaterFact(): { claim: DemoClaim; later: DemoClaim['submissions'] } {
  const claim = demoClaim();
  const known = new Set(claim.submissions.map(({ submissionId }) => submissionId));
  const more = demoClaim((teller, { strikeId }) => {
    teller.tell('water-lost', { type: 'strike', strikeId }, 1, {
      waterLostGal: 30_000,
      method: 'other',
      basis: 'later figure',
      flowingFrom: null,
      flowingTo: null,
      byWorkerId: 'w-101',
      note: null,
    });
  });
  return { claim, later: more.submissions.filter(({ submissionId }) => !known.has(submissionId)) };
}

export async function checkIssued(world: World, revisions: number): Promise<void> {
  const issued = await world.issued();
  expect(issued.map(({ revision }) => revision)).toEqual(
    Array.from({ length: revisions }, (_, index) => index + 1),
  );
  for (const { pdfSha256, demandCents } of issued) {
    const pdf = await world.deps.evidence.get(pdfSha256);
    expect(pdf).not.toBeNull();
    expect((await readPacketTotals(pdf!)).totalCents).toBe(demandCents);
  }
}

/**
 * Holds the first `count` takers of a name until all of them have come so far, so that each has read the ledger before
 * any has written: left alone, the twins in memory answer so fast that one is done before the next begins.
 */
export function together(deps: PacketsDeps, count: number, space: string): PacketsDeps {
  let open = (): void => undefined;
  const all = new Promise<void>((resolve) => (open = resolve));
  let come = 0;
  return {
    ...deps,
    unique: {
      ...deps.unique,
      take: async (taken, name, owner) => {
        if (taken.startsWith(space)) {
          come += 1;
          if (come === count) open();
          if (come <= count) await all;
        }
        return deps.unique.take(taken, name, owner);
      },
    },
  };
}

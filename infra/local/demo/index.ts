import { demoModels } from './models.ts';
import { demoRateBooks } from './rates.ts';
import { closedStrikes } from './stories/closed.ts';
import { openStrikes } from './stories/open.ts';
import { otherCauses } from './stories/otherCauses.ts';
import { pastClaims } from './stories/pastClaims.ts';
import { tellLater, tellPastStrike } from './stories/tellPast.ts';
import { stockOfParts } from './stock.ts';
import { Teller } from './teller.ts';
import { townInventoryCsv } from './town.ts';
import type { EvidenceAddress } from '../../../shared/evidence/address.ts';
import type { Statement } from '../../../shared/costs/statement.ts';
import type { ClaimState } from '../../../shared/claims/state.ts';
import { ask, send, type DemoServer } from './send.ts';

export { demoMembers, demoUtility } from './utility.ts';

export interface DemoApi extends DemoServer {
  loadInventory(csv: string, fileName: string): Promise<void>;
  /** Puts the town's network model in force, unless one is. */
  loadNetwork(): Promise<void>;
  /** Puts the town's streets and its stations' areas in force, unless they are. */
  loadLayers(): Promise<void>;
}

export interface DemoLoaded {
  readonly submissions: number;
  /** The claim whose packet is frozen and sent, and the link to its PDF. */
  readonly packet: { readonly claimId: string; readonly url: string; readonly demandCents: number };
}

/**
 * Loads the demo utility through the same API that everyone uses. Times hang on `now`; run again with the same `now`
 * after a load was cut short, it completes it, because every repeat is answered as a repeat.
 */
export async function loadDemo(api: DemoApi, now: Date): Promise<DemoLoaded> {
  await api.loadInventory(townInventoryCsv(), 'tansy-harbor-hydrants.csv');
  await api.loadNetwork();
  await api.loadLayers();
  const teller = new Teller(now);
  demoRateBooks.forEach((edition, index) =>
    teller.tell('rate-book', { type: 'utility' }, 4000 - index, edition, { role: 'manager' }),
  );
  demoModels.forEach((model, index) =>
    teller.tell('hydrant-model', { type: 'utility' }, 3990 - index, model, { role: 'manager' }),
  );
  otherCauses(teller);
  const closed = closedStrikes(teller);
  openStrikes(teller);
  const payers = {
    billed: ['Harrowgate Casualty', '2026-0001'],
    open: ['Lanternfish Mutual', '2026-0002'],
  } as const;
  for (const key of ['billed', 'open'] as const) {
    const { strikeId, partyId, claimId } = closed[key];
    const [name, claimNumber] = payers[key];
    teller.tell(
      'claim-opened',
      { type: 'claim', claimId },
      key === 'billed' ? 300 : 20,
      {
        strikeId,
        partyId,
        claimNumber,
        payerKind: 'drivers-insurer',
        payer: {
          name,
          address: '200 Counting House Row, Tansy City',
          attention: 'Property damage claims',
          reference: null,
        },
        note: null,
      },
      { role: 'clerk' },
    );
  }

  // After everything else, whose ids they must not change.
  const past = pastClaims.map((claim) => ({ claim, ...tellPastStrike(teller, claim) }));

  // Ids of its own, so that no other story's change.
  const shelves = new Teller(now, 11);
  stockOfParts(shelves);
  for (const told of [...teller.told, ...shelves.told]) await send(api, told);

  const { claimId } = closed.billed;
  const { url, demandCents, revision } = await frozenPacket(api, claimId);
  const last = new Teller(now, 7);
  last.tell(
    'demand-sent',
    { type: 'claim', claimId },
    280,
    {
      revision,
      sentOn: last.dayAgo(280),
      to: 'Property damage claims, Harrowgate Casualty',
      how: 'email',
      amountCents: demandCents,
      note: null,
    },
    { role: 'clerk' },
  );
  for (const { claim, claimId: pastId } of past) {
    const packet = await frozenPacket(api, pastId);
    const { lines } = await ask<Statement>(api, 'clerk', `/api/claims/${pastId}/statement`);
    const laborLineId = lines.find(({ kind }) => kind === 'labor')?.lineId ?? null;
    tellLater(last, claim, pastId, { ...packet, laborLineId });
  }
  for (const told of last.told) await send(api, told);
  return {
    submissions: teller.told.length + shelves.told.length + last.told.length,
    packet: { claimId, url, demandCents },
  };
}

interface Frozen {
  readonly url: string;
  readonly demandCents: number;
  readonly revision: number;
}

/** Freezes the claim's packet, unless a load that was cut short has done so. */
async function frozenPacket(api: DemoApi, claimId: string): Promise<Frozen> {
  const { claim } = await ask<{ claim: ClaimState }>(api, 'clerk', `/api/claims/${claimId}`);
  const [packet] = claim.packets;
  if (packet) {
    const { url } = await ask<EvidenceAddress>(api, 'clerk', `/api/evidence/${packet.pdfSha256}`);
    return { url, demandCents: packet.demandCents, revision: packet.revision };
  }
  return ask<Frozen>(api, 'clerk', `/api/claims/${claimId}/packet`, { mode: 'freeze' });
}

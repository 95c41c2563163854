import { demoRateBooks } from '../../infra/local/demo/rates.ts';
import { closedStrikes } from '../../infra/local/demo/stories/closed.ts';
import { Teller } from '../../infra/local/demo/teller.ts';
import { demoMembers, demoUtility } from '../../infra/local/demo/utility.ts';
import { photoBytes, photoNames } from '../../infra/local/demo/photos.ts';
import { createHash } from 'node:crypto';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { hydrantsNear } from '../../shared/packet/near.ts';
import { claimCase, type ClaimCase } from '../../shared/packet/case.ts';
import { packetContent, type PacketQuestion } from '../../shared/packet/content.ts';
import { shownPhotos } from '../../shared/packet/photos.ts';
import type { PacketContent } from '../../shared/packet/schema.ts';
import type { Recorded } from '../../shared/submissions/recorded.ts';
import type { Submission } from '../../shared/submissions/submission.ts';
import { gatherPhotos, type Gathered, type PhotoSource } from '../../functions/packets/photos/gather.ts';

/** The demo utility's billed claim, as the ledger would hold it: one strike from the report to the return. */
export const demoNow = new Date('2026-11-25T14:00:00Z');
export const frozenAt = '2026-11-25T14:05:00Z';

export const struckHydrant: Hydrant = {
  hydrantId: 'TH-0071',
  latitudeDeg: 40.62733,
  longitudeDeg: -60.42871,
  place: 'Sailmaker Street at Thimble Avenue',
  type: 'dry-barrel',
  service: 'active',
  modelId: 'BW-D51',
  installedOn: '2004-05-18',
  outlets: [
    { kind: 'hose', diameterIn: 2.5 },
    { kind: 'hose', diameterIn: 2.5 },
    { kind: 'pumper', diameterIn: 4.5 },
  ],
  mainSizeIn: 8,
  lateralSizeIn: 6,
  lateralLengthFt: 14,
  buryDepthFt: 4.5,
  isolationValveId: 'V-0071',
  owner: 'Tansy Harbor',
  private: false,
  lastInspectedOn: '2026-08-01',
  ratedFlowGpm: null,
  source: { file: 'demo.csv', row: 71 },
};

/** Some that stand around it. */
export const townNear: readonly Hydrant[] = (
  [
    ['TH-0070', 0.0011, -0.0004],
    ['TH-0072', -0.0009, 0.0013],
    ['TH-0088', 0.0004, 0.0022],
    ['TH-0104', -0.0021, -0.0012],
  ] as const
).map(([hydrantId, north, east]) => ({
  ...struckHydrant,
  hydrantId,
  latitudeDeg: struckHydrant.latitudeDeg + north,
  longitudeDeg: struckHydrant.longitudeDeg + east,
}));

export interface DemoClaim {
  readonly claimId: string;
  readonly strikeId: string;
  readonly partyId: string;
  readonly submissions: readonly Submission[];
}

/** Tells the story; `more` may tell further facts of the same strike. */
export function demoClaim(
  more: (teller: Teller, ids: Omit<DemoClaim, 'submissions'>) => void = () => undefined,
): DemoClaim {
  const teller = new Teller(demoNow);
  demoRateBooks.forEach((edition, index) =>
    teller.tell('rate-book', { type: 'utility' }, 4000 - index, edition, { role: 'manager' }),
  );
  const { billed } = closedStrikes(teller);
  teller.tell(
    'claim-opened',
    { type: 'claim', claimId: billed.claimId },
    300,
    {
      strikeId: billed.strikeId,
      partyId: billed.partyId,
      claimNumber: '2026-0001',
      payerKind: 'drivers-insurer',
      payer: {
        name: 'Harrowgate Casualty',
        address: '200 Counting House Row, Tansy City',
        attention: 'Property damage claims',
        reference: null,
      },
      note: null,
    },
    { role: 'clerk' },
  );
  more(teller, billed);
  return { ...billed, submissions: teller.told.map(({ submission }) => submission) };
}

/** As the ledger recorded them: a minute after each was sent. */
export const asRecorded = (submissions: readonly Submission[]): Recorded[] =>
  submissions.map((submission) => ({
    submission,
    recordedAt: new Date(Date.parse(submission.sentAt) + 60_000).toISOString(),
    deliveredBy: null,
    erased: false,
  }));

export function demoCase(claim: DemoClaim): ClaimCase {
  const found = claimCase({
    claimId: claim.claimId,
    recorded: asRecorded(claim.submissions),
    hydrantType: () => 'dry-barrel',
    modelOf: () => struckHydrant.modelId,
    timeZone: demoUtility.timeZone,
  });
  if (!found) throw new Error('the demo has no such claim');
  return found;
}

/** The drawn photos of the demo, all arrived. */
export const demoPhotos: PhotoSource = {
  get: async (sha256) => byHash.get(sha256) ?? null,
};
const byHash = new Map(
  photoNames.map((name) => {
    const bytes = photoBytes(name);
    return [createHash('sha256').update(bytes).digest('hex'), bytes];
  }),
);

export async function demoContent(
  claim: DemoClaim,
  changed: Partial<PacketQuestion> = {},
  source: PhotoSource = demoPhotos,
): Promise<{ content: PacketContent; photos: Gathered; found: ClaimCase }> {
  const found = demoCase(claim);
  const photos = await gatherPhotos(
    shownPhotos(found.facts).map(({ exhibit }) => exhibit),
    source,
  );
  const content = packetContent({
    locale: 'en',
    settings: demoUtility,
    issue: { state: 'frozen', revision: 1, asOf: frozenAt, changes: null, added: [] },
    preparedBy: demoMembers.clerk,
    ...found,
    demandCents: found.statement.totalCents,
    otherDemandsCents: 0,
    hydrant: struckHydrant,
    near: hydrantsNear(struckHydrant, townNear, struckHydrant.hydrantId),
    photos: photos.found,
    ...changed,
  });
  return { content, photos, found };
}

/** The demo claim with a second one of the same strike, for a firm that pays for itself. */
export function twoDemoClaims(): DemoClaim & { readonly secondClaimId: string } {
  let secondClaimId = '';
  const claim = demoClaim((teller, { strikeId }) => {
    secondClaimId = teller.id(200);
    teller.tell(
      'claim-opened',
      { type: 'claim', claimId: secondClaimId },
      200,
      {
        strikeId,
        partyId: null,
        claimNumber: '2026-0009',
        payerKind: 'self-insured',
        payer: { name: 'Wherry Freight', address: null, attention: null, reference: null },
        note: null,
      },
      { role: 'clerk' },
    );
  });
  return { ...claim, secondClaimId };
}

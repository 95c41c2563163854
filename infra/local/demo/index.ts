import { demoModels } from './models.ts';
import { photoBytes, photoNames, declared } from './photos.ts';
import { demoRateBooks } from './rates.ts';
import { closedStrikes, openStrikes, otherCauses } from './stories.ts';
import { Teller } from './teller.ts';
import { townInventoryCsv } from './town.ts';
import type { Role } from '../../../shared/roles.ts';
import type { Submission } from '../../../shared/submissions/submission.ts';

export { demoMembers, demoUtility } from './utility.ts';

/** What the demo needs of a running server: its address, a token for each role, and a way to load an inventory file. */
export interface DemoApi {
  readonly origin: string;
  tokenFor(role: Role): Promise<string>;
  loadInventory(csv: string, fileName: string): Promise<void>;
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

  const post = poster(api);
  for (const { role, submission } of teller.told) await post(role, submission);
  await sendPhotos(api, teller);

  const frozen = await call<{ url: string; demandCents: number; revision: number }>(
    api,
    'clerk',
    `/api/claims/${closed.billed.claimId}/packet`,
    { mode: 'freeze' },
  );
  const last = new Teller(now, 7);
  last.tell(
    'demand-sent',
    { type: 'claim', claimId: closed.billed.claimId },
    280,
    {
      revision: frozen.revision,
      sentOn: last.hoursAgo(280).slice(0, 10),
      to: 'Property damage claims, Harrowgate Casualty',
      how: 'email',
      amountCents: frozen.demandCents,
      note: null,
    },
    { role: 'clerk' },
  );
  for (const { role, submission } of last.told) await post(role, submission);
  return {
    submissions: teller.told.length + last.told.length,
    packet: { claimId: closed.billed.claimId, url: frozen.url, demandCents: frozen.demandCents },
  };
}

async function call<T>(api: DemoApi, role: Role, path: string, body: unknown): Promise<T> {
  const response = await fetch(api.origin + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', authorization: `Bearer ${await api.tokenFor(role)}` },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${path} answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

const poster = (api: DemoApi) => (role: Role, submission: Submission) =>
  call(api, role, '/api/submissions', submission);

/** Uploads each declared photo as a phone would: ask where to, then put the bytes there. */
async function sendPhotos(api: DemoApi, teller: Teller): Promise<void> {
  const bytesOf = new Map(
    photoNames.map((name) => [declared(name, teller.hoursAgo(0), '').sha256, photoBytes(name)]),
  );
  for (const { role, submission } of teller.told) {
    const photos = 'photos' in submission.body ? (submission.body.photos as { sha256: string }[]) : [];
    for (const { sha256 } of photos) {
      const target = await call<{
        state: string;
        upload?: { url: string; method: string; headers: Record<string, string> };
      }>(api, role, '/api/evidence/uploads', {
        subject: submission.subject,
        submissionId: submission.submissionId,
        sha256,
      });
      if (!target.upload) continue;
      const { url, method, headers } = target.upload;
      const bytes = bytesOf.get(sha256);
      if (!bytes) throw new Error(`no demo photo has the hash ${sha256}`);
      const sent = await fetch(new URL(url, api.origin), {
        method,
        headers,
        body: bytes as Uint8Array<ArrayBuffer>,
      });
      if (!sent.ok) throw new Error(`photo upload answered ${sent.status}: ${await sent.text()}`);
    }
  }
}

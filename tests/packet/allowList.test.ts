import { beforeAll, describe, expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { packetContentSchema, type PacketContent } from '../../shared/packet/schema.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { parseSubmission } from '../../shared/submissions/submission.ts';
import { demoClaim, demoContent, type DemoClaim } from '../support/demoClaim.ts';
import { everythingIn } from '../support/pdf.ts';

/** What must never leave in a packet, each planted where it would stand. */
const secrets = {
  driverName: 'CANARY Driver Name',
  driverAddress: 'CANARY 1 Driver Lane',
  driverPhone: '555-0177',
  ownerName: 'CANARY Owner Name',
  vin: '1CANARYV1N0000017'.replaceAll('O', '0'),
  adjuster: 'CANARY Adjuster',
  officer: 'CANARY Officer',
  partyNote: 'CANARY party note',
  callerName: 'CANARY Caller',
  callerPhone: '555-0178',
  strikeNote: 'CANARY strike note',
  hazardNote: 'CANARY hazard note',
  dispatcher: 'CANARY Dispatcher',
  repairNote: 'CANARY repair note',
  stepNote: 'CANARY step note',
  valveNote: 'CANARY valve note',
  testNote: 'CANARY test note',
  waterNote: 'CANARY water note',
  returnNote: 'CANARY return note',
  claimNote: 'CANARY claim note',
  correctionReason: 'CANARY why it was corrected',
  replacedAmount: '98765.43',
  otherPartyPlate: 'CANARY-PLATE-2',
  otherPartyPolicy: 'CANARY-POLICY-2',
  otherPartyReport: 'CANARY-REPORT-2',
} as const;

/** The demo's claim with every private field filled, a second party, and an amount that a correction replaced. */
function planted(): DemoClaim {
  const claim = demoClaim((teller, { strikeId }) => {
    const subject = { type: 'strike', strikeId } as const;
    const other = teller.told.find(({ submission }) => submission.kind === 'party')!.submission
      .body as BodyOf<'party'>;
    teller.tell('party', subject, 390, {
      ...other,
      vehicles: [
        {
          kind: 'car',
          plate: secrets.otherPartyPlate,
          plateRegion: null,
          vin: null,
          description: 'CANARY other car',
        },
      ],
      driver: { name: secrets.driverName, address: null, phone: null },
      insurer: { company: null, policyNumber: secrets.otherPartyPolicy, claimNumber: null, adjuster: null },
      police: { agency: null, reportNumber: secrets.otherPartyReport, officer: null },
    });
    const contractors: BodyOf<'repair'>['contractors'] = [
      {
        contractor: 'Paver',
        invoiceNumber: '77',
        invoicedOn: '2026-11-20',
        work: 'sidewalk',
        amountCents: 98_765_43,
        invoiceSha256: null,
      },
    ];
    const bare: BodyOf<'repair'> = {
      hydrantId: null,
      damage: null,
      crew: [],
      machines: [],
      parts: [],
      contractors,
      steps: [],
      reassembledAt: null,
      completedAt: null,
      photos: [],
      note: null,
    };
    const wrong = teller.tell('repair', subject, 380, bare);
    teller.correct(wrong, 'repair', subject, 379, secrets.correctionReason, {
      ...bare,
      contractors: [{ ...contractors[0]!, amountCents: 120_00 }],
    });
  });
  const plant = (submission: Submission): Submission => {
    const body = submission.body as Record<string, unknown>;
    const put = (more: object): Submission => ({ ...submission, body: { ...body, ...more } }) as Submission;
    switch (submission.kind) {
      case 'party': {
        const { insurer, police, vehicles } = submission.body;
        return put({
          driver: { name: secrets.driverName, address: secrets.driverAddress, phone: secrets.driverPhone },
          owner: { name: secrets.ownerName, address: null, phone: null },
          insurer: insurer && { ...insurer, adjuster: secrets.adjuster },
          police: police && { ...police, officer: secrets.officer },
          vehicles: vehicles.map((vehicle) => ({ ...vehicle, vin: secrets.vin })),
          note: secrets.partyNote,
        });
      }
      case 'strike':
        return put({
          reportedBy: { ...submission.body.reportedBy, name: secrets.callerName, phone: secrets.callerPhone },
          dispatch: submission.body.dispatch && { ...submission.body.dispatch, takenBy: secrets.dispatcher },
          note: secrets.strikeNote,
          hazardNote: secrets.hazardNote,
        });
      case 'repair':
        return put({
          note: secrets.repairNote,
          steps: submission.body.steps.map((step) => ({ ...step, note: secrets.stepNote })),
        });
      case 'valve-operation':
        return put({ note: secrets.valveNote });
      case 'flow-test':
        return put({ note: secrets.testNote });
      case 'water-lost':
        return put({ note: secrets.waterNote });
      case 'return-to-service':
        return put({ note: secrets.returnNote });
      case 'claim-opened':
        return put({ note: secrets.claimNote });
      default:
        return submission;
    }
  };
  return { ...claim, submissions: claim.submissions.map(plant) };
}

let content: PacketContent;
let everything: string;
beforeAll(async () => {
  const claim = planted();
  for (const submission of claim.submissions) {
    const parsed = parseSubmission(JSON.parse(JSON.stringify(submission)));
    expect(parsed.ok ? [] : parsed.problems).toEqual([]);
  }
  const built = await demoContent(claim);
  ({ content } = built);
  const pdf = await renderPacket(packetDocument(content), (sha256) => built.photos.shown.get(sha256)!);
  everything = `${await everythingIn(pdf)}\n${JSON.stringify(content)}`;
});

describe('what a packet never holds', () => {
  it.each(Object.entries(secrets))('%s', (_, secret) => {
    expect(everything).not.toContain(secret);
    expect(everything).not.toContain(secret.replaceAll(' ', ''));
  });

  it('any canary at all', () => {
    expect(everything).not.toMatch(/CANARY/i);
  });

  it('names of workers, who go by their ids; the one who signs the letter is named', () => {
    const { people } = demoUtility;
    const signer = people.find(({ personId }) => personId === 'c-301')!;
    expect(everything).toContain(signer.name);
    expect(everything).toContain('w-101');
    for (const { name, personId } of people) if (personId !== 'c-301') expect(everything).not.toContain(name);
  });

  it('rates that no line was billed at', () => {
    // The demo's operator did not work on this job; his class and rate are in the same edition.
    expect(everything).toContain('38.4150');
    expect(everything).not.toContain('34.7200');
    expect(everything).not.toContain('Equipment operator');
  });
});

describe('what it does hold, so that the search above looked at the right thing', () => {
  it('what the payer needs to find its insured and the crash', () => {
    const party = content.party!;
    for (const value of [
      party.policyNumber,
      party.police.reportNumber,
      party.vehicles[0]?.plate,
      'Harrowgate Casualty',
    ])
      expect(everything).toContain(value);
  });

  it('the corrected amount, and that there was a correction', () => {
    expect(everything).toContain('120.00');
    expect(content.manifest.submissions.filter(({ kind }) => kind === 'correction').length).toBeGreaterThan(
      0,
    );
    expect(content.statement.lines.filter(({ section }) => section === 'contractors')).toMatchObject([
      { amountCents: 120_00 },
    ]);
  });

  it('an exception by name: who put off the flow test, and why', async () => {
    const claim = demoClaim();
    const deferred = claim.submissions.map((submission): Submission =>
      submission.kind === 'return-to-service' && submission.body.closes.includes(claim.strikeId)
        ? {
            ...submission,
            body: {
              ...submission.body,
              proofs: submission.body.proofs.map((proof) =>
                proof.proof === 'flow-test'
                  ? {
                      ...proof,
                      result: 'deferred' as const,
                      deferredReason: 'Ice on the street',
                      deferredByWorkerId: 'm-401',
                    }
                  : proof,
              ),
            },
          }
        : submission,
    );
    const built = await demoContent({ ...claim, submissions: deferred });
    const pdf = await renderPacket(packetDocument(built.content), (sha256) =>
      built.photos.shown.get(sha256)!,
    );
    const text = (await everythingIn(pdf)).replaceAll(/\s+/g, ' ');
    expect(text).toContain('Not yet re-tested: Flow test. Put off by Anselm Quarshie');
    expect(text).toContain('Ice on the street');
  });
});

describe('the allow-list itself', () => {
  /** Paths of every object in the content. */
  function objects(value: unknown, path: (string | number)[] = []): (string | number)[][] {
    if (typeof value !== 'object' || value === null) return [];
    const own = Array.isArray(value) ? [] : [path];
    return [
      ...own,
      ...Object.entries(value).flatMap(([key, inner]) =>
        objects(inner, [...path, Array.isArray(value) ? Number(key) : key]),
      ),
    ];
  }

  it('refuses a field that it does not name, in every object of the packet', () => {
    const paths = objects(content).filter((path) => path.at(-1) !== 'params');
    expect(paths.length).toBeGreaterThan(100);
    for (const path of paths) {
      const copy = structuredClone(content) as unknown as Record<string, unknown>;
      const at = path.reduce<Record<string, unknown>>(
        (inner, key) => inner[key] as Record<string, unknown>,
        copy,
      );
      at['canary'] = 'x';
      expect(packetContentSchema.safeParse(copy).success, path.join('.')).toBe(false);
    }
  });
});

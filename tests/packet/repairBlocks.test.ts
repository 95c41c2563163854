import { beforeAll, describe, expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { demoModels } from '../../infra/local/demo/models.ts';
import { readPdfLines } from '../../infra/local/packetTotals.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { packetContentSchema, type PacketContent } from '../../shared/packet/schema.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { recordWaterLost } from '../../shared/water/record.ts';
import { demoClaim, demoContent } from '../support/demoClaim.ts';
import { structureOf } from '../support/pdf.ts';

/** The demo's packet, its model on record, with other facts in it, as pdf.js reads it back. */
async function packetWith(changed: Partial<PacketContent> = {}): Promise<{ text: string; alts: string[] }> {
  const content = packetContentSchema.parse({ ...base, photos: [], ...changed });
  const pdf = await renderPacket(packetDocument(content), () => {
    throw new Error('no photos here');
  });
  const alts = (await structureOf(pdf)).flatMap(({ role, alt }) => (role === 'Figure' ? [alt ?? ''] : []));
  return { text: (await readPdfLines(pdf)).flat().flat().join(' ').replaceAll(/\s+/g, ' '), alts };
}

const withModel = (more: Parameters<typeof demoClaim>[0] = () => undefined): ReturnType<typeof demoClaim> =>
  demoClaim((teller, ids) => {
    teller.tell('hydrant-model', { type: 'utility' }, 5000, demoModels[0]!, { role: 'manager' });
    more(teller, ids);
  });

let base: PacketContent;
beforeAll(async () => {
  ({ content: base } = await demoContent(withModel()));
});

describe('tightening', () => {
  it('shows the maker’s torque with manual and page beside what was used', async () => {
    const { text } = await packetWith();
    // 72 lbf·ft is 97.6 N·m: × 1.355 818 (NIST SP 811, second-hand).
    expect(text).toMatch(/Breakaway flange 72 lbf·ft \(97\.6 N·m\) 72 lbf·ft \(97\.6 N·m\) Crew lead w-101/);
    expect(text).toContain('Brindlewater D-51 field manual, passes 30%, 60%, 100%, once round');
    expect(text).toContain('wrench TW-3, calibrated Feb 19, 2026');
    // 8 kgf·m is 78.5 N·m, 57.9 lbf·ft: 9.806 65 N (standard gravity).
    expect(text).toContain('57.9 lbf·ft (78.5 N·m) to 65.1 lbf·ft 60 lbf·ft');
    expect(text).toContain('Printed as 8 to 9 kgf·m.');
    // No embedded face has the eighth's own sign.
    expect(text).toMatch(/Run the nut home and back it off 1\/8 /);
    expect(text).toContain('Backed off 0.25 of a turn');
  });

  it('says to see the maker’s manual where no torque is on record, and assumes none', async () => {
    expect((await packetWith()).text).toMatch(/No torque on record: see the maker’s (Not recorded )?/);
    const bare = await demoContent(demoClaim(), {});
    expect(bare.content.tightening.joints.every(({ printed }) => printed === null)).toBe(true);
    const { text } = await packetWith({ tightening: { modelId: null, joints: [] } });
    expect(text).toContain('the maker’s manual gives the torques, and none is assumed here');
    expect(text).toContain('the step “Bolts tightened crosswise to torque” is recorded for');
    expect(text).not.toContain('lbf·ft');
  });

  it('gives the printed order, in numbers and as rings that are told in words', async () => {
    const { text, alts } = await packetWith();
    // ASME PCC-1 legacy cross pattern for 8 and 4 bolts (second-hand); six: opposite pairs (from memory).
    expect(text).toContain('Breakaway flange, by places on the ring: 1-5-3-7, 2-6-4-8.');
    expect(text).toContain('Weather cover, by places on the ring: 1-3-2-4.');
    expect(text).toContain('Bonnet, by places on the ring: 1-4, 2-5, 3-6.');
    // 30, 60, 100 %, then once round (a gasket maker's guidance crediting the Fluid Sealing Association, seen).
    expect(text).toContain('Passes: 30% crosswise, 60% crosswise, 100% crosswise, 100% once round.');
    expect(alts.filter((alt) => alt.includes('1-5-3-7, 2-6-4-8'))).toHaveLength(1);
  });

  it('names no worker', () => {
    for (const { used } of base.tightening.joints)
      if (used) expect(used.by).toEqual({ workerId: 'w-101', trade: 'Crew lead' });
  });
});

const times = {
  struckAt: '2026-11-08T11:24:00Z',
  struckAtBasis: 'bounded',
  lastSeenSoundAt: '2026-11-08T11:10:00Z',
  firstCallAt: '2026-11-08T11:30:00Z',
  waterShutAt: '2026-11-08T12:12:00Z',
} as const;

/** A record of the demo's strike as the form would make it; the latest stands. */
async function recorded(
  question: NonNullable<BodyOf<'water-lost'>['question']>,
  more: Partial<BodyOf<'water-lost'>> = {},
): Promise<string> {
  const answer = recordWaterLost(question, { system: 'us', locale: 'en' });
  const { content } = await demoContent(
    withModel((teller, { strikeId }) =>
      teller.tell('water-lost', { type: 'strike', strikeId }, 380, {
        ...answer,
        byWorkerId: 'w-101',
        note: 'CANARY note',
        question,
        ...more,
      }),
    ),
  );
  return (await packetWith({ waterLost: content.waterLost, statement: content.statement })).text;
}

describe('water lost', () => {
  // Engineering ToolBox (seen): a vertical jet of 36 in from a 4 in pipe, k 0.97, is 529 gpm.
  const jet = { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 } as const;

  it('states method, accuracy, three figures, which is claimed, and what the duration stands on', async () => {
    const text = await recorded({
      found: jet,
      times,
      used: [
        { use: 'flushing', waterGal: 1500 },
        { use: 'flow-test', flowGpm: 850, minutes: 4 },
      ],
    });
    expect(text).toContain('Method flow multiplied by time; the flow by the height of the jet');
    expect(text).toMatch(/Stated accuracy of the method ±1\d%/);
    const gallons = (label: string): number =>
      Number(new RegExp(`${label} ([\\d,]+) gal`).exec(text)?.[1]?.replaceAll(',', ''));
    expect(gallons('Claimed')).toBe(gallons('Low'));
    expect(gallons('Low')).toBeLessThan(gallons('Best'));
    expect(gallons('Best')).toBeLessThan(gallons('High'));
    expect(text).toContain('Figure claimed the low one, as the rule is');
    expect(text).toMatch(
      /Start between Nov 8, 2026, 6:10 AM EST \(last seen without water\) and Nov 8, 2026, 6:30 AM EST/,
    );
    expect(text).toContain('End Nov 8, 2026, 7:12 AM EST, water shut');
    // Not lost but used: 1,500 gal, and 850 gpm for four minutes.
    expect(text).toContain('Counted apart, not lost flushing 1,500 gal; flow tests 3,400 gal');
    expect(text).not.toContain('CANARY');
  });

  it('says why another figure was chosen', async () => {
    const text = await recorded({
      found: jet,
      times,
      choice: { figure: 'best', reason: 'Two people measured the jet' },
    });
    expect(text).toContain('Figure claimed the best one. Reason: Two people measured the jet');
  });

  it('shows a challenge with who answered it, by name', async () => {
    // 200,000 gal in 15 min is not possible from one hydrant (computed from a press report): to be challenged.
    const text = await recorded(
      {
        found: { mainValve: 'does-not-hold', flow: 'full-bore' },
        times: {
          struckAt: '2026-11-08T11:57:00Z',
          struckAtBasis: 'witnessed',
          waterShutAt: '2026-11-08T12:12:00Z',
        },
        flowTest: { staticPsi: 74, residualPsi: 47, flowGpm: 839 },
        choice: { figure: 'own', waterGal: 200_000, reason: 'Read in the paper' },
      },
      { challengeAnswer: { text: 'The main itself had burst.', byWorkerId: 'm-401' } },
    );
    expect(text).toContain('Reason: Read in the paper');
    expect(text).toMatch(/Answered by Anselm Quarshie \([^)]*m-401\): The main itself had burst\./);
  });

  it('of a valve that held states that none was lost, and bills none', async () => {
    const text = await recorded({ found: { mainValve: 'holds', flow: 'none' }, times });
    expect(text).toContain('No water was lost: the hydrant’s main valve held.');
    expect(text).toContain('Method none was lost');
    expect(text).toContain('Claimed 0 gal');
  });

  it('reads a record of before, which has a figure and a sentence alone', async () => {
    const { text } = await packetWith({
      waterLost: {
        ...base.waterLost!,
        basis: 'By the meter of the supply main',
        method: 'metered',
        times: null,
        estimate: null,
        choice: null,
      },
    });
    expect(text).toContain('By the meter of the supply main Claimed');
    expect(text).toContain('Method metered');
    expect(text).toMatch(/How long it ran Nov 8, 2026, 6:24 AM EST to Nov 8, 2026, 7:12 AM EST/);
  });

  it('without a record says so, and why none is billed', async () => {
    const { text } = await packetWith({ waterLost: null });
    expect(text).toContain('Nobody recorded an estimate.');
  });
});

it('in Spanish, with every word in the catalogue', async () => {
  const { text, alts } = await packetWith({ locale: 'es', units: 'metric' });
  expect(`${text} ${alts.join(' ')}`).not.toMatch(/\[[a-z-]+\.[a-zA-Z0-9.-]+\]|NaN|undefined/);
  expect(text).toContain('Agua perdida');
  expect(text).toMatch(/97\.6 N·m \(72 lbf·pie\)/);
});

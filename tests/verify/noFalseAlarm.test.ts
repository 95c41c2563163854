import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, it } from 'vitest';
import { renderPacket } from '../../functions/packets/pdf/render.ts';
import { demoModels } from '../../infra/local/demo/models.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import type { PacketQuestion } from '../../shared/packet/content.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { recordWaterLost } from '../../shared/water/record.ts';
import { pageTextReader } from '../../shared/verify/file/pageText.ts';
import { sayFinding } from '../../shared/verify/finding.ts';
import { verifyPacket } from '../../shared/verify/verify.ts';
import { demoClaim, demoContent, frozenAt, type DemoClaim } from '../support/demoClaim.ts';
import type { PhotoSource } from '../../functions/packets/photos/gather.ts';
import { demoPhotos } from '../support/demoClaim.ts';

/** What the verifier says of a packet that nobody touched. */
async function saidOf(
  claim: DemoClaim,
  changed: Partial<PacketQuestion> = {},
  source: PhotoSource = demoPhotos,
): Promise<string[]> {
  const { content, photos } = await demoContent(claim, changed, source);
  const pdf = await renderPacket(packetDocument(content), (sha256) => photos.shown.get(sha256)!);
  const found = await verifyPacket({ pdf }, pageTextReader({ getDocument }));
  expect(found.checked).not.toBeNull();
  return found.findings.map((each) => sayFinding('en', each));
}

it.each<[string, () => Promise<string[]>]>([
  ['in Spanish', () => saidOf(demoClaim(), { locale: 'es' })],
  ['in metric units', () => saidOf(demoClaim(), { settings: { ...demoUtility, units: 'metric' } })],
  ['a preview', () => saidOf(demoClaim(), { issue: { state: 'preview', asOf: frozenAt } })],
  [
    'in another time zone',
    () => saidOf(demoClaim(), { issue: { state: 'preview', asOf: '2026-12-31T23:59:59Z' } }),
  ],
  ['without any photo', () => saidOf(demoClaim(), {}, { get: async () => null })],
  [
    'of a utility with a long name, and signs that no face has',
    () =>
      saidOf(demoClaim(), {
        settings: {
          ...demoUtility,
          name: 'The Consolidated Water, Sewer and Fire Protection District of Greater Tansy Harbor and of the Northern 水道 Islands',
        },
      }),
  ],
  [
    'with words pasted from elsewhere: ligatures, joiners, marks of direction, controls, signs that no face has',
    () => {
      const claim = demoClaim();
      const pasted =
        'o\ufb03ce \ufb01re \u202egnp\u202c a\u200db\u2060c\ufeffd\u00ade\u0001f \ufdfa \u3349 🔧️ 12';
      for (const { body } of claim.submissions) {
        if ('payer' in body) (body.payer as { name: string }).name = pasted;
        if ('photos' in body)
          for (const photo of body.photos as { caption: string }[]) photo.caption = pasted;
      }
      return saidOf(claim);
    },
  ],
  ['that demands a part', () => saidOf(demoClaim(), { demandCents: 100_000, otherDemandsCents: 20_000 })],
  [
    'with the model’s torques and rings, and water that somebody measured',
    () =>
      saidOf(
        demoClaim((teller, { strikeId }) => {
          teller.tell('hydrant-model', { type: 'utility' }, 5000, demoModels[0]!, { role: 'manager' });
          const question = {
            found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 },
            times: {
              struckAt: '2026-11-08T11:24:00Z',
              struckAtBasis: 'bounded',
              lastSeenSoundAt: '2026-11-08T11:10:00Z',
              firstCallAt: '2026-11-08T11:30:00Z',
              waterShutAt: '2026-11-08T12:12:00Z',
            },
            choice: { figure: 'best', reason: 'Two people measured the jet' },
          } as const;
          teller.tell('water-lost', { type: 'strike', strikeId }, 380, {
            ...recordWaterLost(question, { system: 'us', locale: 'en' }),
            byWorkerId: 'w-101',
            note: null,
            question,
          });
        }),
      ),
  ],
])('a packet nobody touched raises no alarm: %s', async (_, said) => {
  expect(await said()).toEqual([]);
});

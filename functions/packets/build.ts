import { createHash } from 'node:crypto';
import { packetContent } from '../../shared/packet/content.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { declaredPapers } from '../../shared/packet/papers.ts';
import { shownPhotos } from '../../shared/packet/photos.ts';
import type { PacketContent } from '../../shared/packet/schema.ts';
import type { PacketsDeps } from './deps.ts';
import type { LoadedClaim } from './load.ts';
import { gatherPapers } from './papers/gather.ts';
import { renderPacket } from './pdf/render.ts';
import { gatherPhotos, MOST_PDF_BYTES } from './photos/gather.ts';

/** Letters, drawings and data: what a packet holds beside its photos and papers, with room. */
const OWN_BYTES = 2_500_000;

export interface Issue {
  readonly issue: PacketContent['issue'];
  readonly preparedBy: string;
  readonly demandCents: number;
  readonly otherDemandsCents: number;
}

export interface BuiltPacket {
  readonly content: PacketContent;
  readonly pdf: Uint8Array;
  readonly sha256: string;
}

/** How many are asked after at once. */
const AT_ONCE = 8;

/** When the bytes of exhibits came, of those whose bytes are there. */
async function arrivals(
  hashes: readonly string[],
  evidence: PacketsDeps['evidence'],
): Promise<Map<string, string>> {
  const arrived = new Map<string, string>();
  const waiting = hashes.values();
  await Promise.all(
    Array.from({ length: AT_ONCE }, async () => {
      for (const sha256 of waiting) {
        const at = await evidence.arrivedAt(sha256);
        if (at !== null) arrived.set(sha256, at);
      }
    }),
  );
  return arrived;
}

/** The packet of a claim as a PDF, in the utility's language. The same records and issue give the same bytes. */
export async function buildPacket(deps: PacketsDeps, claim: LoadedClaim, issue: Issue): Promise<BuiltPacket> {
  const { evidence, settings, progress } = deps;
  const papers = await gatherPapers(
    declaredPapers(claim.facts).map(({ exhibit }) => exhibit),
    evidence,
    (done, total) => progress?.('papers', done, total),
  );
  const photos = await gatherPhotos(
    shownPhotos(claim.facts).map(({ exhibit }) => exhibit),
    evidence,
    {
      mostBytes: MOST_PDF_BYTES - OWN_BYTES - papers.bytes,
      onDone: (done, total) => progress?.('photos', done, total),
    },
  );
  const arrived = await arrivals(
    [...declaredPapers(claim.facts), ...shownPhotos(claim.facts)].map(({ exhibit }) => exhibit.sha256),
    evidence,
  );
  const content = packetContent({
    ...claim,
    ...issue,
    locale: settings.locale,
    settings,
    photos: photos.found,
    papers: papers.found,
    arrived,
  });
  progress?.('pages', 0, 1);
  const copyOf = (sha256: string): Uint8Array => {
    const bytes = photos.shown.get(sha256) ?? papers.shown.get(sha256);
    if (!bytes) throw new Error(`no copy was made for a photo that is shown: ${sha256}`);
    return bytes;
  };
  const pdf = await renderPacket(packetDocument(content), copyOf, papers.papers);
  progress?.('pages', 1, 1);
  return { content, pdf, sha256: createHash('sha256').update(pdf).digest('hex') };
}

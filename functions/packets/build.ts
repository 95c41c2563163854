import { createHash } from 'node:crypto';
import { packetContent } from '../../shared/packet/content.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { shownPhotos } from '../../shared/packet/photos.ts';
import type { PacketContent } from '../../shared/packet/schema.ts';
import type { PacketsDeps } from './deps.ts';
import type { LoadedClaim } from './load.ts';
import { renderPacket } from './pdf/render.ts';
import { gatherPhotos } from './photos/gather.ts';

export interface Issue {
  readonly issue: PacketContent['issue'];
  readonly preparedBy: string;
  readonly demandCents: number;
  readonly otherDemandsCents: number;
}

export interface BuiltPacket {
  readonly pdf: Uint8Array;
  readonly sha256: string;
}

/** The packet of a claim as a PDF, in the utility's language. The same records and issue give the same bytes. */
export async function buildPacket(deps: PacketsDeps, claim: LoadedClaim, issue: Issue): Promise<BuiltPacket> {
  const exhibits = shownPhotos(claim.facts).map(({ exhibit }) => exhibit);
  const photos = await gatherPhotos(exhibits, deps.evidence);
  const content = packetContent({
    ...claim,
    ...issue,
    locale: deps.settings.locale,
    settings: deps.settings,
    photos: photos.found,
  });
  const pdf = await renderPacket(packetDocument(content), (sha256) => {
    const bytes = photos.shown.get(sha256);
    if (!bytes) throw new Error(`no copy was made for a photo that is shown: ${sha256}`);
    return bytes;
  });
  return { pdf, sha256: createHash('sha256').update(pdf).digest('hex') };
}

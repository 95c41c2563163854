import { createHash } from 'node:crypto';
import PDFKit from 'pdfkit';
import { evidenceKey } from '../../functions/stores/evidence/byHash.ts';
import type { PacketsDeps } from '../../functions/packets/deps.ts';
import { demoClaim } from './demoClaim.ts';
import { packetWorld } from './packetWorld.ts';

/** An issued packet as its payer has it: the file, its companion archive, the signature and the utility's public keys. */
export interface IssuedPacket {
  readonly pdf: Uint8Array;
  readonly archive: Uint8Array;
  readonly jws: string;
  /** JSON, as `/api/packet-keys` answers it. */
  readonly keys: string;
}

/** A police report of two pages, by a library that has no part in merging or reading it. */
async function policeReport(): Promise<Buffer> {
  const doc = new PDFKit({ info: { CreationDate: new Date(0) } });
  const chunks: Buffer[] = [];
  doc.fontSize(16).text('Crash report TP-4471: unit 1 struck hydrant at 6:24 AM', 72, 72);
  doc.addPage().text('Statement of the witness', 72, 72);
  doc.end();
  for await (const chunk of doc as AsyncIterable<Buffer>) chunks.push(chunk);
  return Buffer.concat(chunks);
}

/** The demo's claim with a police report among its papers, frozen through the API and read back from the store. */
export async function issuedPacket(over: Partial<PacketsDeps> = {}): Promise<IssuedPacket> {
  const report = await policeReport();
  const sha256 = createHash('sha256').update(report).digest('hex');
  const claim = demoClaim((teller, { strikeId }) => {
    teller.tell(
      'documents',
      { type: 'strike', strikeId },
      200,
      {
        documents: [
          {
            sha256,
            bytes: report.byteLength,
            mediaType: 'application/pdf',
            takenAt: null,
            view: 'document',
            caption: null,
            what: 'police-report',
            title: 'Crash report',
            number: 'TP-4471',
          },
        ],
        note: null,
      },
      { role: 'clerk' },
    );
  });
  const world = await packetWorld(claim, over);
  await world.objects.put(evidenceKey(sha256), report, { contentType: 'application/pdf' });
  const { status, body } = await world.packet({ mode: 'freeze' });
  if (status !== 200 && status !== 201) throw new Error(`not frozen: ${JSON.stringify(body)}`);
  const fetched = async (hash: string): Promise<Uint8Array> => {
    const found = await world.objects.get(evidenceKey(hash));
    if (!found) throw new Error(`not kept: ${hash}`);
    return new Uint8Array(found.bytes);
  };
  return {
    pdf: await fetched(body.pdfSha256),
    archive: await fetched(body.archiveSha256),
    jws: body.signature,
    keys: JSON.stringify(await world.deps.signer.publicKeys()),
  };
}

import type { BodyOf } from '../../shared/submissions/submission.ts';
import { packetArchive } from './archive.ts';
import type { BuiltPacket } from './build.ts';
import type { PacketsDeps } from './deps.ts';

type Frozen = BodyOf<'packet-frozen'>;
export type KeptFiles = Pick<
  Frozen,
  'pdfSha256' | 'pdfBytes' | 'archiveSha256' | 'archiveBytes' | 'signature' | 'keyId'
>;

/** Signs a built packet, keeps its PDF and its companion archive, and answers what the freezing fact says of them. */
export async function keepIssued(
  deps: PacketsDeps,
  { content, pdf, sha256 }: BuiltPacket,
  of: { readonly claimNumber: string; readonly revision: number },
): Promise<KeptFiles> {
  deps.progress?.('sign', 0, 1);
  const { jws, keyId } = await deps.signer.sign(sha256, of);
  await deps.evidence.put(pdf, 'application/pdf');
  const archive = await packetArchive({
    content,
    source: deps.evidence,
    signature: jws,
    onDone: (done, total) => deps.progress?.('archive', done, total),
  });
  const { sha256: archiveSha256 } = await deps.evidence.put(archive, 'application/zip');
  return {
    pdfSha256: sha256,
    pdfBytes: pdf.byteLength,
    archiveSha256,
    archiveBytes: archive.byteLength,
    signature: jws,
    keyId,
  };
}

/** Puts back what the store has lost of an issued packet: the signature it bears gives the same archive again. */
export async function putBack(
  deps: PacketsDeps,
  { content, pdf }: BuiltPacket,
  frozen: Frozen,
): Promise<void> {
  const { pdfSha256, archiveSha256, signature } = frozen;
  if (!(await deps.evidence.has(pdfSha256))) await deps.evidence.put(pdf, 'application/pdf');
  if (archiveSha256 === undefined || signature === undefined || (await deps.evidence.has(archiveSha256)))
    return;
  await deps.evidence.put(
    await packetArchive({ content, source: deps.evidence, signature }),
    'application/zip',
  );
}

import type { PacketSigner } from './packetSigner.ts';

/** The signer at an address: `file:///key.json`, or the ARN of a KMS key. */
export async function openPacketSigner(address: string): Promise<PacketSigner> {
  if (address.startsWith('file:')) {
    const { fileSigner } = await import('./localSigner.ts');
    return fileSigner(new URL(address));
  }
  const { kmsSigner } = await import('./kmsSigner.ts');
  return kmsSigner(address);
}

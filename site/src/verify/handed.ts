import { kindOf, type HandedKind } from '../../../shared/verify/file/kind.ts';
import type { Verification } from '../../../shared/verify/verify.ts';

/** A file that somebody chose or dropped. */
export interface Handed {
  readonly name: string;
  readonly kind: HandedKind;
  readonly bytes: Uint8Array;
}

/** More than any packet's archive has. */
const MOST_BYTES = 1_000_000_000;

/** The new files after the old; of each kind the last counts, and of what cannot be used all are named. */
export async function withFiles(old: readonly Handed[], files: readonly File[]): Promise<Handed[]> {
  const read = await Promise.all(
    files.map(async (file): Promise<Handed> => {
      if (file.size > MOST_BYTES) return { name: file.name, kind: 'unknown', bytes: new Uint8Array() };
      const bytes = new Uint8Array(await file.arrayBuffer());
      return { name: file.name, kind: kindOf(bytes), bytes };
    }),
  );
  const all = [...old, ...read];
  return all.filter(
    ({ kind, name }, index) =>
      !all
        .slice(index + 1)
        .some((later) => later.kind === kind && (kind !== 'unknown' || later.name === name)),
  );
}

export interface Answer {
  readonly found: Verification;
  /** The keys were not among the files and came from this address. */
  readonly keysOnline: boolean;
}

/** Null without a packet. Keys are asked for only when there may be a signature to check and none were handed in. */
export async function answer(handed: readonly Handed[]): Promise<Answer | null> {
  const of = (kind: HandedKind): Uint8Array | null =>
    handed.find((file) => file.kind === kind)?.bytes ?? null;
  const text = (bytes: Uint8Array | null): string | null => bytes && new TextDecoder().decode(bytes);
  const pdf = of('pdf');
  if (!pdf) return null;
  const [archive, jws, given] = [of('archive'), text(of('signature')), text(of('keys'))];
  const { verify } = await import('./run.ts');
  const online = given === null && (jws !== null || archive !== null) ? await keysOnline() : null;
  const found = await verify({ pdf, archive, jws, keys: given ?? online });
  return { found, keysOnline: online !== null };
}

/** The utility's public keys, when this page stands beside its API and the network is there. */
async function keysOnline(): Promise<string | null> {
  try {
    const response = await fetch('/api/packet-keys');
    const isJson = response.headers.get('content-type')?.includes('json') ?? false;
    return response.ok && isJson ? await response.text() : null;
  } catch {
    return null;
  }
}

import type { Role } from '../../../shared/roles.ts';
import type { Told } from './teller.ts';
import { declared, photoBytes, photoNames } from './photos.ts';

/** What the demo needs of a running server: its address and a token for each role. */
export interface DemoServer {
  readonly origin: string;
  tokenFor(role: Role): Promise<string>;
}

/** Asks the API as a role. Throws with the server's own words when it refuses. */
export async function ask<T>(server: DemoServer, role: Role, path: string, body?: unknown): Promise<T> {
  const response = await fetch(server.origin + path, {
    method: body === undefined ? 'GET' : 'POST',
    headers: {
      authorization: `Bearer ${await server.tokenFor(role)}`,
      ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  if (!response.ok) throw new Error(`${path} answered ${response.status}: ${await response.text()}`);
  return (await response.json()) as T;
}

const bytesByHash = (): ReadonlyMap<string, Uint8Array> =>
  new Map(photoNames.map((name) => [declared(name, '', '').sha256, photoBytes(name)]));

/** Sends one submission, then the photos it declares, as a phone would: ask where to, then put the bytes there. */
export async function send(server: DemoServer, { role, submission }: Told): Promise<void> {
  await ask(server, role, '/api/submissions', submission);
  const photos =
    'photos' in submission.body ? (submission.body.photos as readonly { readonly sha256: string }[]) : [];
  for (const { sha256 } of photos) {
    const { subject, submissionId } = submission;
    const { upload } = await ask<{
      upload?: { url: string; method: string; headers: Record<string, string> };
    }>(server, role, '/api/evidence/uploads', { subject, submissionId, sha256 });
    if (!upload) continue;
    const bytes = bytesByHash().get(sha256);
    if (!bytes) throw new Error(`no demo photo has the hash ${sha256}`);
    const sent = await fetch(new URL(upload.url, server.origin), {
      method: upload.method,
      headers: upload.headers,
      body: bytes as Uint8Array<ArrayBuffer>,
    });
    if (!sent.ok) throw new Error(`photo upload answered ${sent.status}: ${await sent.text()}`);
  }
}

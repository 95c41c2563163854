import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join } from 'node:path';
import { decodeJwt } from 'jose';
import * as z from 'zod';
import { RefusedStart } from '../refusedStart.ts';

/** A deployment's API, asked with the rights of whoever signed in on this machine. */
export interface ApiAccess {
  readonly origin: string;
  readonly token: string;
}

/** Where a sign-in page takes codes and renewals: what `GET /api/utility` says of it. */
export const provider = z.object({ page: z.url(), clientId: z.string().min(1) });
export type Provider = z.infer<typeof provider>;

const kept = provider.extend({ idToken: z.string(), refreshToken: z.string() });
export type Kept = z.infer<typeof kept>;

type Variables = Readonly<Record<string, string | undefined>>;

/** Renewed when it ends sooner: longer than a load of an inventory takes. */
const RENEW_BEFORE_MS = 10 * 60_000;
const PATIENCE_MS = 15_000;

/** The deployment that the environment names (`DEPLOYMENT_URL`), without a slash at its end; null: this machine's server. */
export function deploymentOf(variables: Variables): string | null {
  const named = variables['DEPLOYMENT_URL'] ?? '';
  return named === '' ? null : deploymentAddress(named);
}

/** An address over https, or this machine's. Throws `RefusedStart` otherwise: a token must not travel in the open. */
export function deploymentAddress(named: string): string {
  const url = URL.parse(named);
  const isHere = url !== null && ['localhost', '127.0.0.1', '[::1]'].includes(url.hostname);
  if (url === null || (url.protocol !== 'https:' && !(isHere && url.protocol === 'http:')))
    throw new RefusedStart('command.deployment-address', { address: named });
  return url.origin;
}

/** The file of one deployment's sign-in, readable by its owner alone. */
const fileOf = (origin: string, variables: Variables): string =>
  join(
    variables['XDG_CONFIG_HOME'] ?? join(homedir(), '.config'),
    'hydrant-strike-ledger',
    `${new URL(origin).host.replaceAll(/[^\w.-]/g, '_')}.json`,
  );

export async function keepSignIn(origin: string, signIn: Kept, variables: Variables): Promise<string> {
  const file = fileOf(origin, variables);
  await mkdir(dirname(file), { recursive: true, mode: 0o700 });
  await writeFile(`${file}.new`, JSON.stringify(signIn), { mode: 0o600 });
  await rename(`${file}.new`, file);
  return file;
}

/**
 * The API of a deployment with a token that is good for a while. `DEPLOYMENT_TOKEN` goes before what `npm run sign-in` kept,
 * for a machine with no browser. Throws `RefusedStart` when nobody has signed in, or no more.
 */
export async function openAccess(origin: string, variables: Variables): Promise<ApiAccess> {
  const given = variables['DEPLOYMENT_TOKEN'] ?? '';
  if (given !== '') return { origin, token: given };
  const text = await readFile(fileOf(origin, variables), 'utf8').catch(() => null);
  if (text === null) throw new RefusedStart('command.not-signed-in', { address: origin });
  const signIn = keptIn(text);
  if (signIn === null) throw new RefusedStart('command.not-signed-in', { address: origin });
  if ((decodeJwt(signIn.idToken).exp ?? 0) * 1000 - RENEW_BEFORE_MS > Date.now())
    return { origin, token: signIn.idToken };
  const renewed = await exchange(signIn, { grant_type: 'refresh_token', refresh_token: signIn.refreshToken });
  if (!renewed) throw new RefusedStart('command.not-signed-in', { address: origin });
  await keepSignIn(origin, { ...signIn, idToken: renewed.id_token }, variables);
  return { origin, token: renewed.id_token };
}

/** What is in the file; null where it was cut off or changed, which a new sign-in makes good. */
function keptIn(text: string): Kept | null {
  try {
    return kept.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

const answered = z.object({ id_token: z.string(), refresh_token: z.string().optional() });

/** Asks the sign-in page for tokens (RFC 6749); null when it will not have what was sent. */
export async function exchange(
  { page, clientId }: Provider,
  asked: Readonly<Record<string, string>>,
): Promise<z.infer<typeof answered> | null> {
  const response = await fetch(`${page}/oauth2/token`, {
    method: 'POST',
    body: new URLSearchParams({ client_id: clientId, ...asked }),
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  if (response.status === 400 || response.status === 401) return null;
  if (!response.ok) throw new Error(`the sign-in page answered ${response.status}`);
  return answered.parse(await response.json());
}

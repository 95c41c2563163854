import * as z from 'zod';

/**
 * Signing in at the utility's own sign-in page: authorization code with PKCE (RFC 6749 4.1, RFC 7636), as a page without a
 * secret does it. Pure but for the network and the device's random numbers; what is kept where is `signingIn.ts`'s.
 */
export interface Provider {
  /** The base of the sign-in page: `https://….auth.….amazoncognito.com`. */
  readonly page: string;
  readonly clientId: string;
}

export const provider = z.object({ page: z.url(), clientId: z.string().min(1) });

/** What this device made up before it left for the sign-in page, and needs when it is back. */
export interface Proof {
  readonly state: string;
  readonly verifier: string;
}

export interface Tokens {
  readonly idToken: string;
  /** Absent in the answer to a renewal: the one before stays good. */
  readonly refreshToken: string | null;
}

/** `refused`: the provider will not have it, and only a new sign-in helps. `unreachable`: try again. */
export type Exchanged =
  { readonly outcome: 'ok'; readonly tokens: Tokens } | { readonly outcome: 'refused' | 'unreachable' };

const base64Url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

/** 256 bits, as RFC 7636 4.1 recommends: 43 signs. */
const randomText = (): string => base64Url(crypto.getRandomValues(new Uint8Array(32)));

export const newProof = (): Proof => ({ state: randomText(), verifier: randomText() });

/** RFC 7636 4.2, S256. */
export async function challengeOf(verifier: string): Promise<string> {
  return base64Url(new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(verifier))));
}

/** Where to send the person. `returnTo` is the address that the provider knows, to the letter. */
export async function signInAddress(
  { page, clientId }: Provider,
  returnTo: string,
  { state, verifier }: Proof,
  locale: string,
): Promise<string> {
  const asked = new URLSearchParams({
    response_type: 'code',
    client_id: clientId,
    redirect_uri: returnTo,
    scope: 'openid profile email',
    state,
    code_challenge: await challengeOf(verifier),
    code_challenge_method: 'S256',
    lang: locale,
  });
  return `${page}/oauth2/authorize?${asked.toString()}`;
}

export const signOutAddress = ({ page, clientId }: Provider, returnTo: string): string =>
  `${page}/logout?${new URLSearchParams({ client_id: clientId, logout_uri: returnTo }).toString()}`;

export type CameBack =
  | { readonly outcome: 'code'; readonly code: string }
  /** The person gave up there, or the answer is not to what this device asked. */
  | { readonly outcome: 'refused' }
  | { readonly outcome: 'none' };

/** What the address says after the sign-in page. An answer that this device did not ask for is refused (RFC 6749 10.12). */
export function cameBack(query: string, state: string | null): CameBack {
  const said = new URLSearchParams(query);
  const code = said.get('code');
  if (code === null && said.get('error') === null) return { outcome: 'none' };
  if (code === null || state === null || said.get('state') !== state) return { outcome: 'refused' };
  return { outcome: 'code', code };
}

export const exchangeCode = (
  at: Provider,
  returnTo: string,
  code: string,
  verifier: string,
): Promise<Exchanged> =>
  exchange(at, {
    grant_type: 'authorization_code',
    code,
    redirect_uri: returnTo,
    code_verifier: verifier,
  });

export const renew = (at: Provider, refreshToken: string): Promise<Exchanged> =>
  exchange(at, { grant_type: 'refresh_token', refresh_token: refreshToken });

const answered = z.object({ id_token: z.string(), refresh_token: z.string().optional() });

/** As long as a slow line at a curb needs, and no longer: what waits behind it waits too. */
const PATIENCE_MS = 15_000;

async function exchange(
  { page, clientId }: Provider,
  asked: Readonly<Record<string, string>>,
): Promise<Exchanged> {
  try {
    const response = await fetch(`${page}/oauth2/token`, {
      method: 'POST',
      body: new URLSearchParams({ client_id: clientId, ...asked }),
      signal: AbortSignal.timeout(PATIENCE_MS),
      credentials: 'omit',
    });
    // RFC 6749 5.2: 400 says that the code or the refresh token will not do. A busy or broken provider says something else.
    if (response.status === 400 || response.status === 401) return { outcome: 'refused' };
    if (!response.ok) return { outcome: 'unreachable' };
    const tokens = answered.parse(await response.json());
    return {
      outcome: 'ok',
      tokens: { idToken: tokens.id_token, refreshToken: tokens.refresh_token ?? null },
    };
  } catch {
    return { outcome: 'unreachable' };
  }
}

/** Takes the refresh token back (RFC 7009), so that a device left behind cannot sign in by itself. Best effort. */
export async function revoke({ page, clientId }: Provider, refreshToken: string): Promise<void> {
  await fetch(`${page}/oauth2/revoke`, {
    method: 'POST',
    body: new URLSearchParams({ client_id: clientId, token: refreshToken }),
    signal: AbortSignal.timeout(PATIENCE_MS),
    credentials: 'omit',
    keepalive: true,
  }).catch(() => undefined);
}

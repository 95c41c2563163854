import { decodeJwt } from 'jose/jwt/decode';
import * as z from 'zod';
import { role, type Member } from '../../../../shared/roles.ts';
import { observable } from './observable.ts';
import { readStored, readText, removeStored, writeStored, writeText } from './storage.ts';

/**
 * Who is signed in on this device. The token is only read here, never judged: the server verifies it on each request.
 * An expired sign-in still says whose device this is, so that forms open, keep and queue.
 */
export interface Session extends Member {
  readonly token: string;
  /** Epoch milliseconds by this device's clock. */
  readonly expiresAt: number;
  /** The server no longer takes this token, whatever the device's clock says. */
  readonly refused: boolean;
}

const claims = z.object({
  sub: z.string().min(1),
  name: z.string().optional(),
  exp: z.number(),
  iat: z.number().optional(),
  'cognito:groups': z.array(z.string()).optional(),
});

/** When a token was taken on this device, by its own clock: an hour that is wrong by a day may not end a sign-in. */
const taken = z.object({ at: z.number(), signature: z.string() });
const TAKEN = 'token-taken';
const signatureOf = (token: string): string => token.split('.').at(-1) ?? '';

/**
 * What a token says of its person; null when it is none. With `takenAt` (epoch milliseconds by this device's clock) it
 * lasts as long from then on as it was issued for, whatever the difference between the clocks; without, until its own end.
 */
export function readToken(token: string, takenAt: number | null = null): Session | null {
  try {
    const { sub, name, exp, iat, 'cognito:groups': groups = [] } = claims.parse(decodeJwt(token));
    const roles = groups.flatMap((group) => role.safeParse(group).data ?? []);
    const expiresAt = takenAt === null || iat === undefined ? exp * 1000 : takenAt + (exp - iat) * 1000;
    return { token, personId: sub, name: name ?? sub, roles, expiresAt, refused: false };
  } catch {
    return null;
  }
}

function stored(): Session | null {
  const token = readText('token');
  if (token === null) return null;
  const { at, signature } = taken.safeParse(readStored(TAKEN)).data ?? { at: null, signature: null };
  return readToken(token, signature === signatureOf(token) ? at : null);
}

export const session = observable<Session | null>(null);

/** False when there is a token that only a new sign-in can replace. */
export const isCurrent = (current: Session, now = Date.now()): boolean =>
  !current.refused && current.expiresAt > now;

/** Set while the sign-in on this device came from a link. */
const BY_LINK = 'token-by-link';

/** Whether the utility has a page to sign in at, as far as this device knows (what `utility.ts` keeps). */
const hasSignInPage = (): boolean =>
  ((readStored('utility') as { readonly signIn?: unknown } | null)?.signIn ?? null) !== null;

/**
 * Reads the sign-in at start: a token in the address (`#token=…`) replaces the stored one and leaves the address at
 * once, so that it stands in no history and no screenshot. Not where the utility has a page to sign in at: there nobody is
 * given links, and one on a sticker or in a letter would have a crew write, with no signal to find out, in another's name.
 */
export function startSession(): void {
  const given = /^#token=([^&]+)/.exec(location.hash)?.[1];
  if (given !== undefined) history.replaceState(null, '', location.pathname + location.search);
  if (given === undefined || hasSignInPage()) session.set(stored());
  else if (signIn(decodeURIComponent(given))) writeStored(BY_LINK, true);
  // Another tab signed in or out.
  window.addEventListener('storage', ({ key }) => {
    if (key === 'hsl.token' || key === null) session.set(stored());
  });
}

/** True when the text is a token that can be read. */
export function signIn(token: string): boolean {
  const at = Date.now();
  const read = readToken(token.trim(), at);
  if (!read) {
    session.set(stored());
    return false;
  }
  removeStored(BY_LINK);
  // First, so that another tab that sees the token change finds it.
  writeStored(TAKEN, { at, signature: signatureOf(read.token) });
  writeText('token', read.token);
  session.set(read);
  return true;
}

export function signOut(): void {
  removeStored('token');
  removeStored(TAKEN);
  removeStored(BY_LINK);
  session.set(null);
}

/** Ends a sign-in that came from a link, once the utility is known to have a page to sign in at. */
export function refuseLink(): void {
  if (readStored(BY_LINK) === true) signOut();
}

/** The server answered 401 to this token. */
export function tokenRefused(token: string): void {
  const current = session.get();
  if (current?.token === token) session.set({ ...current, refused: true });
}

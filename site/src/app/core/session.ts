import { decodeJwt } from 'jose';
import * as z from 'zod';
import { role, type Member } from '../../../../shared/roles.ts';
import { observable } from './observable.ts';
import { readText, removeStored, writeText } from './storage.ts';

/**
 * Who is signed in on this device. The token is only read here, never judged: the server verifies it on each request.
 * An expired sign-in still says whose device this is, so that forms open, keep and queue.
 */
export interface Session extends Member {
  readonly token: string;
  /** Epoch milliseconds. */
  readonly expiresAt: number;
  /** The server no longer takes this token, whatever the device's clock says. */
  readonly refused: boolean;
}

const claims = z.object({
  sub: z.string().min(1),
  name: z.string().optional(),
  exp: z.number(),
  'cognito:groups': z.array(z.string()).optional(),
});

/** What a token says of its person; null when it is none. */
export function readToken(token: string, refused = false): Session | null {
  try {
    const { sub, name, exp, 'cognito:groups': groups = [] } = claims.parse(decodeJwt(token));
    const roles = groups.flatMap((group) => role.safeParse(group).data ?? []);
    return { token, personId: sub, name: name ?? sub, roles, expiresAt: exp * 1000, refused };
  } catch {
    return null;
  }
}

function stored(): Session | null {
  const token = readText('token');
  return token === null ? null : readToken(token);
}

export const session = observable<Session | null>(null);

/** False when there is a token that only a new sign-in can replace. */
export const isCurrent = (current: Session, now = Date.now()): boolean =>
  !current.refused && current.expiresAt > now;

/**
 * Reads the sign-in at start: a token in the address (`#token=…`) replaces the stored one and leaves the address at
 * once, so that it stands in no history and no screenshot.
 */
export function startSession(): void {
  const given = /^#token=([^&]+)/.exec(location.hash)?.[1];
  if (given !== undefined) {
    history.replaceState(null, '', location.pathname + location.search);
    signIn(decodeURIComponent(given));
  } else session.set(stored());
  // Another tab signed in or out.
  window.addEventListener('storage', ({ key }) => {
    if (key === 'hsl.token' || key === null) session.set(stored());
  });
}

/** True when the text is a token that can be read. */
export function signIn(token: string): boolean {
  const read = readToken(token.trim());
  if (!read) {
    session.set(stored());
    return false;
  }
  writeText('token', read.token);
  session.set(read);
  return true;
}

export function signOut(): void {
  removeStored('token');
  session.set(null);
}

/** The server answered 401 to this token. */
export function tokenRefused(token: string): void {
  const current = session.get();
  if (current?.token === token) session.set({ ...current, refused: true });
}

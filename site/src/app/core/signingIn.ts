import * as z from 'zod';
import { askAfter } from './api.ts';
import {
  cameBack,
  exchangeCode,
  newProof,
  provider,
  renew,
  revoke,
  signInAddress,
  signOutAddress,
  type Provider,
} from './oidc.ts';
import { preferences } from './preferences.ts';
import { isCurrent, readToken, session, signIn, signOut, tokenRefused } from './session.ts';
import { readStored, removeStored, writeStored } from './storage.ts';

/** What renews a sign-in for the length of a shift; beside the token, and gone with it. */
const kept = provider.extend({ refreshToken: z.string() });
const KEPT = 'renewal';
/** Only between leaving for the sign-in page and coming back. */
const asked = provider.extend({ state: z.string(), verifier: z.string() });
const ASKED = 'signing-in';

/** A token that ends sooner is renewed before it is used. */
const RENEW_BEFORE_MS = 5 * 60_000;

const returnTo = (): string => `${location.origin}/sign-in/`;

/** Leaves for the utility's sign-in page. */
export async function goAndSignIn(at: Provider): Promise<void> {
  const proof = newProof();
  writeStored(ASKED, { ...at, ...proof });
  location.assign(await signInAddress(at, returnTo(), proof, preferences.get().locale));
}

/**
 * Takes what the sign-in page sent back with. `none`: nobody comes from there. The code leaves the address at once, so
 * that it stands in no history.
 */
export async function finishSignIn(): Promise<'none' | 'signed-in' | 'refused' | 'unreachable'> {
  const was = asked.safeParse(readStored(ASKED)).data ?? null;
  const back = cameBack(location.search, was?.state ?? null);
  if (back.outcome === 'none') return 'none';
  removeStored(ASKED);
  history.replaceState(null, '', location.pathname);
  if (back.outcome === 'refused' || was === null) return 'refused';
  const { page, clientId, verifier } = was;
  const exchanged = await exchangeCode({ page, clientId }, returnTo(), back.code, verifier);
  if (exchanged.outcome !== 'ok') return exchanged.outcome;
  const { idToken, refreshToken } = exchanged.tokens;
  if (!signIn(idToken)) return 'refused';
  if (refreshToken !== null) writeStored(KEPT, { page, clientId, refreshToken });
  return 'signed-in';
}

let renewing: Promise<void> | undefined;

/**
 * Renews the sign-in if it ends soon and this device may. Whoever asks meanwhile waits for the same answer. With no signal
 * nothing happens: the request that follows says so.
 */
export function keepSignedIn(now = Date.now()): Promise<void> {
  const current = session.get();
  if (!current || isCurrent(current, now + RENEW_BEFORE_MS)) return Promise.resolve();
  const renewal = kept.safeParse(readStored(KEPT)).data;
  if (!renewal) return Promise.resolve();
  const { refreshToken, ...at } = renewal;
  renewing ??= renew(at, refreshToken)
    .then((renewed) => {
      // Somebody signed out or in while this was on its way.
      if (session.get()?.token !== current.token) return;
      if (renewed.outcome === 'ok') {
        // What renews is somebody else's: a link to sign in by was opened since. Theirs stays.
        if (readToken(renewed.tokens.idToken)?.personId !== current.personId) {
          removeStored(KEPT);
          return;
        }
        signIn(renewed.tokens.idToken);
        if (renewed.tokens.refreshToken !== null)
          writeStored(KEPT, { ...at, refreshToken: renewed.tokens.refreshToken });
      } else if (renewed.outcome === 'refused') {
        removeStored(KEPT);
        if (!isCurrent(current)) tokenRefused(current.token);
      }
    })
    .finally(() => {
      renewing = undefined;
    });
  return renewing;
}

/** From now on nobody is asked to sign in again in the middle of a shift: before each request, and when the screen wakes. */
export function staySignedIn(): void {
  askAfter(() => keepSignedIn());
  const look = (): void => {
    if (document.visibilityState === 'visible') void keepSignedIn();
  };
  document.addEventListener('visibilitychange', look);
  window.addEventListener('online', look);
  look();
}

/** Signs out here, takes the renewal back, and ends the sign-in page's own memory, which would let the next person in. */
export async function leaveAltogether(): Promise<void> {
  const renewal = kept.safeParse(readStored(KEPT)).data;
  removeStored(KEPT);
  signOut();
  if (!renewal) return;
  await revoke(renewal, renewal.refreshToken);
  location.assign(signOutAddress(renewal, `${location.origin}/`));
}

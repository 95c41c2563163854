import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import {
  cameBack,
  challengeOf,
  exchangeCode,
  newProof,
  revoke,
  signInAddress,
} from '../../../site/src/app/core/oidc.ts';
import { fakeProvider, type FakeProvider } from '../../support/fakeProvider.ts';

/** A device, as far as signing in needs one. */
const kept = new Map<string, string>();
const place = { origin: 'https://hydrants.example', pathname: '/sign-in/', search: '', hash: '' };
let went: string | null = null;
vi.stubGlobal('localStorage', {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
});
vi.stubGlobal('location', { ...place, assign: (to: string) => (went = to) });
vi.stubGlobal('history', {
  replaceState: () => {
    location.search = '';
  },
});
const { session, signIn } = await import('../../../site/src/app/core/session.ts');
const { finishSignIn, goAndSignIn, keepSignedIn, leaveAltogether } =
  await import('../../../site/src/app/core/signingIn.ts');

const clientId = 'client-1';
/** Nobody checks a signature here: the server does (decision 0041). */
const tokenOf = (claims: object): string =>
  `${Buffer.from('{"alg":"ES256"}').toString('base64url')}.${Buffer.from(JSON.stringify(claims)).toString('base64url')}.c2ln`;
const now = (): number => Math.floor(Date.now() / 1000);
let person = 'w-1';
let made = 0;
let provider: FakeProvider;
beforeAll(async () => {
  provider = await fakeProvider({
    clientId,
    tokenFor: async () =>
      tokenOf({ sub: person, name: 'A Person', exp: now() + 3600, 'cognito:groups': ['crew'], n: ++made }),
  });
});
afterAll(() => provider.close());
beforeEach(() => {
  kept.clear();
  person = 'w-1';
  went = null;
  location.search = '';
  session.set(null);
  provider.asked.length = 0;
});

/** Goes to the sign-in page, which sends back at once. */
async function goThere(): Promise<string> {
  await goAndSignIn({ page: provider.page, clientId });
  const answer = await fetch(went ?? '', { redirect: 'manual' });
  return new URL(answer.headers.get('location') ?? '').search;
}

describe('the proof', () => {
  it('is made into its challenge as in the example of RFC 7636, appendix B', async () => {
    expect(await challengeOf('dBjftJeZ4CVP-mB92K27uhbUJU1p1r_wW1gFWFOEjXk')).toBe(
      'E9Melhoa2OwvFrEMTJguCHaoeK1t8URWbuGJSstw-cM',
    );
  });

  it('is new each time and of the 43 signs that 256 bits make', () => {
    const [a, b] = [newProof(), newProof()];
    expect(new Set([a.state, a.verifier, b.state, b.verifier]).size).toBe(4);
    for (const text of [a.state, a.verifier]) expect(text).toMatch(/^[\w-]{43}$/);
  });

  it('goes to the sign-in page as its challenge and never itself', async () => {
    const proof = newProof();
    const address = await signInAddress(
      { page: 'https://in.example', clientId },
      'https://a.example/sign-in/',
      proof,
      'es',
    );
    expect(address).not.toContain(proof.verifier);
    expect(Object.fromEntries(new URL(address).searchParams)).toEqual({
      response_type: 'code',
      client_id: clientId,
      redirect_uri: 'https://a.example/sign-in/',
      scope: 'openid profile email',
      state: proof.state,
      code_challenge: await challengeOf(proof.verifier),
      code_challenge_method: 'S256',
      lang: 'es',
    });
  });

  it.each([
    ['', 'x', 'none'],
    ['?code=1&state=x', 'x', 'code'],
    ['?code=1&state=y', 'x', 'refused'],
    ['?code=1&state=x', null, 'refused'],
    ['?code=1', 'x', 'refused'],
    ['?error=access_denied&state=x', 'x', 'refused'],
  ])('an answer %s to %s is %s', (query, state, outcome) => {
    expect(cameBack(query, state).outcome).toBe(outcome);
  });
});

describe('signing in', () => {
  it('ends with the person signed in, and no code in the address', async () => {
    location.search = await goThere();
    expect(await finishSignIn()).toBe('signed-in');
    expect(session.get()).toMatchObject({ personId: 'w-1', name: 'A Person', roles: ['crew'] });
    expect(location.search).toBe('');
    expect([...kept.keys()].sort()).toEqual(['hsl.renewal', 'hsl.token', 'hsl.token-taken']);
  });

  it('does not take an answer that this device did not ask for', async () => {
    const query = await goThere();
    kept.clear();
    location.search = query;
    expect(await finishSignIn()).toBe('refused');
    expect([session.get(), provider.asked]).toEqual([null, []]);
  });

  it('says that the page does not answer, and that it refused', async () => {
    location.search = await goThere();
    provider.answers.push('cut');
    expect(await finishSignIn()).toBe('unreachable');
    location.search = await goThere();
    provider.answers.push(400);
    expect(await finishSignIn()).toBe('refused');
    expect(session.get()).toBeNull();
  });

  it('takes an answer without a token for none', async () => {
    location.search = await goThere();
    provider.answers.push('tokenless');
    expect(await finishSignIn()).toBe('unreachable');
    expect(session.get()).toBeNull();
  });

  it('gives up on a page that never answers, and nobody is kept by one that cannot take a token back', async () => {
    const at = { page: provider.page, clientId };
    // What `AbortSignal.timeout` gives when its time is over (DOM standard).
    const timeout = vi.spyOn(AbortSignal, 'timeout').mockImplementation(() => AbortSignal.abort());
    try {
      expect(await exchangeCode(at, 'https://a.example/', 'code', 'verifier')).toEqual({
        outcome: 'unreachable',
      });
      await revoke(at, 'refresh');
      expect(provider.revoked).toEqual([]);
    } finally {
      timeout.mockRestore();
    }
  });

  it('of nobody who comes from there is nothing', async () => {
    expect(await finishSignIn()).toBe('none');
  });
});

describe('a shift', () => {
  beforeEach(async () => {
    location.search = await goThere();
    await finishSignIn();
    provider.asked.length = 0;
  });
  const inAnHour = (): number => Date.now() + 3_599_000;

  it('asks for nothing while the sign-in is good for long', async () => {
    await keepSignedIn();
    expect(provider.asked).toEqual([]);
  });

  it('goes on when the hour is over: one renewal, however many ask', async () => {
    const before = session.get()!.token;
    await Promise.all([keepSignedIn(inAnHour()), keepSignedIn(inAnHour()), keepSignedIn(inAnHour())]);
    expect(provider.asked.map((one) => one.get('grant_type'))).toEqual(['refresh_token']);
    expect(session.get()!.token).not.toBe(before);
    expect(session.get()!.personId).toBe('w-1');
  });

  it.each(['cut', 503] as const)(
    'keeps the sign-in and what renews it when the page answers %s',
    async (how) => {
      provider.answers.push(how);
      const before = session.get()!;
      await keepSignedIn(inAnHour());
      expect(session.get()).toEqual(before);
      expect(kept.has('hsl.renewal')).toBe(true);
      await keepSignedIn(inAnHour());
      expect(session.get()!.token).not.toBe(before.token);
    },
  );

  // RFC 6749 5.2: 400, or 401 where it is the client that the page does not know any more.
  it.each([400, 401])('ends when the page will renew no more (%d)', async (status) => {
    provider.answers.push(status);
    await keepSignedIn(inAnHour());
    expect(kept.has('hsl.renewal')).toBe(false);
    // What is left of the hour is still good.
    expect(session.get()!.refused).toBe(false);
  });

  it('is over for whoever signed out while a renewal was on its way', async () => {
    const renewing = keepSignedIn(inAnHour());
    await leaveAltogether();
    await renewing;
    expect(session.get()).toBeNull();
    expect([...kept.keys()]).toEqual([]);
    provider.revoked.length = 0;
  });

  it('never makes one person of another', async () => {
    // On the same telephone a colleague opens a link; what renews is still the first one's.
    signIn(tokenOf({ sub: 'w-2', exp: now() + 60 }));
    await keepSignedIn();
    expect(session.get()!.personId).toBe('w-2');
    expect(kept.has('hsl.renewal')).toBe(false);
  });

  it('is over on signing out: nothing is left that signs in by itself, here or there', async () => {
    await leaveAltogether();
    expect([...kept.keys()]).toEqual([]);
    expect(session.get()).toBeNull();
    expect(provider.revoked).toHaveLength(1);
    expect(went).toBe(
      `${provider.page}/logout?client_id=client-1&logout_uri=https%3A%2F%2Fhydrants.example%2F`,
    );
  });
});

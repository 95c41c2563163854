import { beforeEach, describe, expect, it, vi } from 'vitest';

/**
 * A link may sign in only where people are given links. Elsewhere one on a sticker or in a letter would have a crew
 * with no signal write in another's name (login CSRF: RFC 6749, 10.12, is the same attack on its redirect).
 */
const kept = new Map<string, string>();
vi.stubGlobal('localStorage', {
  getItem: (key: string) => kept.get(key) ?? null,
  setItem: (key: string, value: string) => void kept.set(key, value),
  removeItem: (key: string) => void kept.delete(key),
});
vi.stubGlobal('location', { pathname: '/crew/', search: '', hash: '' });
vi.stubGlobal('history', { replaceState: () => (location.hash = '') });
vi.stubGlobal('window', { addEventListener: () => undefined });
const { refuseLink, session, signIn, signOut, startSession } =
  await import('../../../site/src/app/core/session.ts');

const part = (value: object): string => Buffer.from(JSON.stringify(value)).toString('base64url');
const tokenOf = (sub: string): string =>
  `${part({ alg: 'ES256' })}.${part({ sub, exp: Math.floor(Date.now() / 1000) + 3600 })}.c2ln`;
const page = { page: 'https://sign-in.example', clientId: 'client-1' };
const open = (sub: string): string | undefined => {
  location.hash = `#token=${tokenOf(sub)}`;
  startSession();
  expect(location.hash).toBe('');
  return session.get()?.personId;
};
beforeEach(() => {
  kept.clear();
  session.set(null);
});

describe('a link to sign in by', () => {
  it('signs in where no page to sign in at is known', () => {
    expect(open('w-1')).toBe('w-1');
    kept.set('hsl.utility', JSON.stringify({ signIn: null }));
    expect(open('w-2')).toBe('w-2');
  });

  it('signs nobody in, and nobody out, where there is one', () => {
    signIn(tokenOf('w-1'));
    kept.set('hsl.utility', JSON.stringify({ signIn: page }));
    expect(open('w-9')).toBe('w-1');
    signOut();
    expect(open('w-9')).toBeUndefined();
  });

  it('that was opened before anything was known ends when it is; a sign-in at the page does not', () => {
    expect(open('w-9')).toBe('w-9');
    refuseLink();
    expect(session.get()).toBeNull();
    expect(kept.has('hsl.token')).toBe(false);
    open('w-9');
    signIn(tokenOf('w-1'));
    refuseLink();
    expect(session.get()?.personId).toBe('w-1');
  });
});

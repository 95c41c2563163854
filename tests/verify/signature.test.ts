import { CompactSign, exportJWK, generateKeyPair, type JWK } from 'jose';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkSignature, type SignatureAnswer } from '../../shared/verify/signature.ts';

const file = 'a'.repeat(64);
const about = { pdfSha256: file, claimNumber: '2026-0001', revision: 2 };
const question = { pdfSha256: file, claimNumber: '2026-0001', revision: 2 };

interface Key {
  readonly sign: (payload: unknown, alg?: string) => Promise<string>;
  readonly jwk: JWK;
}
async function newKey(kid: string, alg = 'ES256'): Promise<Key> {
  const { privateKey, publicKey } = await generateKeyPair(alg, { extractable: true });
  return {
    sign: (payload) =>
      new CompactSign(new TextEncoder().encode(JSON.stringify(payload)))
        .setProtectedHeader({ alg, kid })
        .sign(privateKey),
    jwk: { ...(await exportJWK(publicKey)), kid, alg, use: 'sig' },
  };
}
const set = (...keys: readonly Key[]): string => JSON.stringify({ keys: keys.map(({ jwk }) => jwk) });
const why = (answer: SignatureAnswer): string =>
  answer.state === 'refused' ? answer.why.code : answer.state;

let key: Key;
let other: Key;
beforeAll(async () => {
  [key, other] = await Promise.all([newKey('one'), newKey('two')]);
});

describe('a packet’s signature', () => {
  it('of this file, by a key of the set, or by a key that stands alone', async () => {
    const jws = await key.sign(about);
    const answer = await checkSignature({ ...question, jws: `${jws}\n`, keys: set(other, key) });
    expect(answer).toMatchObject({ state: 'issued', keyId: 'one', signed: about });
    expect(why(await checkSignature({ ...question, jws, keys: JSON.stringify(key.jwk) }))).toBe('issued');
  });

  it('of another packet', async () => {
    const jws = await key.sign({ ...about, pdfSha256: 'b'.repeat(64) });
    expect(why(await checkSignature({ ...question, jws, keys: set(key) }))).toBe('signature-other-file');
  });

  it('of this file as another claim or revision', async () => {
    for (const changed of [{ claimNumber: '2026-0009' }, { revision: 1 }]) {
      const jws = await key.sign({ ...about, ...changed });
      expect(why(await checkSignature({ ...question, jws, keys: set(key) }))).toBe('signature-other-claim');
    }
  });

  it('by a key that is not in the set', async () => {
    const jws = await key.sign(about);
    expect(why(await checkSignature({ ...question, jws, keys: set(other) }))).toBe('signature-other-key');
  });

  it('by a stranger who names a key of the set', async () => {
    const stranger = await newKey('one');
    const jws = await stranger.sign(about);
    expect(why(await checkSignature({ ...question, jws, keys: set(key) }))).toBe('signature-wrong');
  });

  it('with its payload exchanged', async () => {
    const [head, , tail] = (await key.sign(about)).split('.');
    const payload = Buffer.from(JSON.stringify({ ...about, revision: 3 })).toString('base64url');
    const answer = await checkSignature({ ...question, jws: `${head!}.${payload}.${tail!}`, keys: set(key) });
    expect(why(answer)).toBe('signature-wrong');
  });

  // RFC 8725, 3.1 and 3.2: the algorithm is the checker's choice and never the message's.
  it('of another algorithm, or of none', async () => {
    const rsa = await newKey('rsa', 'RS256');
    expect(why(await checkSignature({ ...question, jws: await rsa.sign(about), keys: set(rsa) }))).toBe(
      'signature-algorithm',
    );
    const none = [{ alg: 'none' }, about].map((part) =>
      Buffer.from(JSON.stringify(part)).toString('base64url'),
    );
    const answer = await checkSignature({ ...question, jws: `${none.join('.')}.`, keys: set(key) });
    expect(answer.state).toBe('refused');
  });

  it('that is none, and keys that are none', async () => {
    expect(why(await checkSignature({ ...question, jws: 'hello', keys: set(key) }))).toBe(
      'signature-unreadable',
    );
    expect(why(await checkSignature({ ...question, jws: await key.sign('hello'), keys: set(key) }))).toBe(
      'signature-unreadable',
    );
    for (const keys of ['hello', '{}', '[]', 'null'])
      expect(why(await checkSignature({ ...question, jws: await key.sign(about), keys }))).toBe(
        'keys-not-keys',
      );
  });

  it('not given, or nothing to check it by', async () => {
    expect(why(await checkSignature({ ...question, jws: null, keys: set(key) }))).toBe('none');
    expect(why(await checkSignature({ ...question, jws: await key.sign(about), keys: null }))).toBe(
      'no-keys',
    );
  });
});

import { createHash, generateKeyPairSync, sign as signDigest, verify } from 'node:crypto';
import { GetPublicKeyCommand, KMSClient, SignCommand } from '@aws-sdk/client-kms';
import { InvokeCommand, LambdaClient } from '@aws-sdk/client-lambda';
import { mockClient } from 'aws-sdk-client-mock';
import { compactVerify, createLocalJWKSet } from 'jose';
import { describe, expect, it } from 'vitest';
import { invokeLater } from '../../functions/stores/jobs/invokeLater.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { derToJose, kmsSigner } from '../../functions/stores/signing/kmsSigner.ts';
import { jwkSigner } from '../../functions/stores/signing/localSigner.ts';
import { testPacketKey } from '../support/packetKey.ts';

const hash = 'ab'.repeat(32);
const of = { claimNumber: '2026-0001', revision: 3 };
const said = { claimNumber: '2026-0001', pdfSha256: hash, revision: 3 };

/** KMS as far as it is asked: a real key, its digest signed, the answer in DER. */
function kms() {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const mock = mockClient(KMSClient);
  mock.on(GetPublicKeyCommand).resolves({ PublicKey: publicKey.export({ format: 'der', type: 'spki' }) });
  mock.on(SignCommand).callsFake(({ Message, MessageType, SigningAlgorithm, KeyId }) => {
    expect({ MessageType, SigningAlgorithm, KeyId }).toEqual({
      MessageType: 'DIGEST',
      SigningAlgorithm: 'ECDSA_SHA_256',
      KeyId: 'arn:key',
    });
    expect(Message).toHaveLength(32);
    signed.push(Message as Buffer);
    // node:crypto signs no bare digest, so the message whose digest it is must be known: the test tells it.
    return {
      Signature: signDigest('sha256', Buffer.from(next.input), { key: privateKey, dsaEncoding: 'der' }),
    };
  });
  const signed: Buffer[] = [];
  const next = { input: '' };
  return { client: new KMSClient({}), mock, signed, next, publicKey };
}

describe('a key that KMS keeps', () => {
  it('signs so that another library can check it, and is handed a digest only', async () => {
    const world = kms();
    const signer = kmsSigner('arn:key', world.client);
    const { keys } = await signer.publicKeys();
    const header = Buffer.from(JSON.stringify({ alg: 'ES256', kid: keys[0]!.kid, typ: 'packet-signature' }));
    const input = `${header.toString('base64url')}.${Buffer.from(JSON.stringify(said)).toString('base64url')}`;
    world.next.input = input;
    const { jws, keyId } = await signer.sign(hash, of);
    expect(world.signed[0]).toEqual(createHash('sha256').update(input).digest());
    const checked = await compactVerify(jws, createLocalJWKSet(await signer.publicKeys()));
    expect(JSON.parse(Buffer.from(checked.payload).toString())).toEqual(said);
    expect(checked.protectedHeader.kid).toBe(keyId);
  });

  it('that does not answer is a store that does not answer', async () => {
    const mock = mockClient(KMSClient);
    mock.on(GetPublicKeyCommand).rejects(new Error('no network'));
    await expect(kmsSigner('arn:key', new KMSClient({})).sign(hash, of)).rejects.toThrow(StoreUnavailable);
  });
});

describe('an ECDSA signature in DER as JOSE takes it', () => {
  it('is what another library makes of it, a thousand times: numbers with and without leading zeros', () => {
    const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
    for (let time = 0; time < 1000; time += 1) {
      const message = Buffer.from(`message ${time}`);
      const jose = derToJose(signDigest('sha256', message, { key: privateKey, dsaEncoding: 'der' }));
      expect(jose).toHaveLength(64);
      expect(verify('sha256', message, { key: publicKey, dsaEncoding: 'ieee-p1363' }, jose)).toBe(true);
    }
  });

  it('and nothing else passes', () => {
    for (const hex of ['', '3000', '30060201010201', '3006020101020101ff', '300602010103010101'])
      expect(() => derToJose(Buffer.from(hex, 'hex'))).toThrow('DER');
  });
});

describe('a key in a file', () => {
  it('signs alike', async () => {
    const signer = await jwkSigner(testPacketKey);
    const { jws } = await signer.sign(hash, of);
    const { payload } = await compactVerify(jws, createLocalJWKSet(await signer.publicKeys()));
    expect(JSON.parse(Buffer.from(payload).toString())).toEqual(said);
    expect(JSON.stringify(await signer.publicKeys())).not.toContain(testPacketKey.d);
  });
});

it('an order is handed over without waiting for what becomes of it', async () => {
  const mock = mockClient(LambdaClient);
  mock.on(InvokeCommand).resolves({ StatusCode: 202 });
  const order = {
    jobId: 'j',
    claimId: 'c',
    member: { personId: 'c-301', name: 'A Clerk', roles: ['clerk' as const] },
    request: { mode: 'freeze' as const },
  };
  await invokeLater('builder', order, new LambdaClient({}));
  const { input } = mock.commandCalls(InvokeCommand)[0]!.args[0];
  expect(input).toMatchObject({ FunctionName: 'builder', InvocationType: 'Event' });
  expect(JSON.parse(Buffer.from(input.Payload as Uint8Array).toString())).toEqual(order);
  mock.on(InvokeCommand).rejects(new Error('throttled'));
  await expect(invokeLater('builder', order, new LambdaClient({}))).rejects.toThrow(StoreUnavailable);
});

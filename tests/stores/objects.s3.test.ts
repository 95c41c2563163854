import {
  GetObjectCommand,
  HeadObjectCommand,
  ListObjectsV2Command,
  PutObjectCommand,
  DeleteObjectCommand,
  S3Client,
} from '@aws-sdk/client-s3';
import { mockClient } from 'aws-sdk-client-mock';
import { beforeEach, describe, expect, it } from 'vitest';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { s3Objects } from '../../functions/stores/objects/s3.ts';

// Only the shape of requests and the reading of faults: the behaviour is the contract's, run on the twin and on files,
// and on S3 itself where OBJECTS_URL names a bucket. Names and status codes: Amazon S3 API Reference (2006-03-01).
const client = new S3Client({ region: 'us-east-1' });
const s3 = mockClient(client);
const store = s3Objects('bucket', 'inv/', client);
const fault = (name: string, httpStatusCode: number): Error =>
  Object.assign(new Error(name), { name, $metadata: { httpStatusCode } });
const bytes = Buffer.from('x');

describe('objects in S3', () => {
  beforeEach(() => s3.reset());

  it('puts under the prefix, with type and cache', async () => {
    s3.on(PutObjectCommand).resolves({});
    expect(await store.put('a/b', bytes, { contentType: 'text/html', cacheControl: 'max-age=60' })).toEqual({
      written: true,
    });
    expect(s3.commandCalls(PutObjectCommand)[0]!.args[0].input).toEqual({
      Bucket: 'bucket',
      Key: 'inv/a/b',
      Body: bytes,
      ContentType: 'text/html',
      CacheControl: 'max-age=60',
    });
  });

  it('puts a new key under S3’s own condition, and reads 412 as "there already"', async () => {
    s3.on(PutObjectCommand).rejects(fault('PreconditionFailed', 412));
    expect(await store.put('a', bytes, { contentType: 'text/plain', ifAbsent: true })).toEqual({
      written: false,
    });
    expect(s3.commandCalls(PutObjectCommand)[0]!.args[0].input.IfNoneMatch).toBe('*');
  });

  it('asks again when another writes the same key, and not for ever', async () => {
    s3.on(PutObjectCommand).rejectsOnce(fault('ConditionalRequestConflict', 409)).resolves({});
    expect(await store.put('a', bytes, { contentType: 'text/plain', ifAbsent: true })).toEqual({
      written: true,
    });
    s3.on(PutObjectCommand).rejects(fault('ConditionalRequestConflict', 409));
    await expect(store.put('a', bytes, { contentType: 'text/plain', ifAbsent: true })).rejects.toThrow(
      StoreUnavailable,
    );
  });

  it('reads a missing object as null', async () => {
    s3.on(GetObjectCommand).rejects(fault('NoSuchKey', 404));
    s3.on(HeadObjectCommand).rejects(fault('NotFound', 404));
    expect(await store.get('a')).toBeNull();
    expect(await store.head('a')).toBeNull();
  });

  it('says an outage as one, and leaves a fault of ours as it is', async () => {
    for (const [name, status] of [
      ['SlowDown', 503],
      ['InternalError', 500],
      ['TimeoutError', 0],
    ] as const) {
      s3.on(GetObjectCommand).rejects(fault(name, status));
      await expect(store.get('a')).rejects.toThrow(StoreUnavailable);
    }
    s3.on(GetObjectCommand).rejects(fault('AccessDenied', 403));
    await expect(store.get('a')).rejects.toThrow('AccessDenied');
    s3.on(GetObjectCommand).resolves({});
    await expect(store.get('a')).rejects.toThrow(StoreUnavailable);
  });

  it('lists page after page, without the prefix', async () => {
    s3.on(ListObjectsV2Command)
      .resolvesOnce({ Contents: [{ Key: 'inv/a/1' }], NextContinuationToken: 't' })
      .resolvesOnce({ Contents: [{ Key: 'inv/a/2' }] });
    expect(await store.list('a/')).toEqual(['a/1', 'a/2']);
    expect(s3.commandCalls(ListObjectsV2Command).map(({ args }) => args[0].input)).toEqual([
      { Bucket: 'bucket', Prefix: 'inv/a/' },
      { Bucket: 'bucket', Prefix: 'inv/a/', ContinuationToken: 't' },
    ]);
  });

  it('deletes by key', async () => {
    s3.on(DeleteObjectCommand).resolves({});
    await store.delete('a');
    expect(s3.commandCalls(DeleteObjectCommand)[0]!.args[0].input).toEqual({
      Bucket: 'bucket',
      Key: 'inv/a',
    });
  });
});

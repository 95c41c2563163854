import {
  DeleteObjectCommand,
  GetObjectCommand,
  HeadObjectCommand,
  ListObjectsV2Command,
  PutObjectCommand,
  S3Client,
} from '@aws-sdk/client-s3';
import { StoreUnavailable } from '../faults.ts';
import { orUnavailable } from '../outage.ts';
import { assertKey, inByteOrder, wholeSecond, type ObjectStore } from './objects.ts';
import { waits } from '../patience.ts';

/** Two writers of one new key at once: S3 answers one of them 409, meaning "ask again". */
const conflictTries = 3;
/** A page is 1,000 keys; more than this is a prefix nobody meant to list. */
const mostPages = 1000;

interface MaybeAws {
  readonly name?: string;
  readonly code?: string;
  readonly $metadata?: { readonly httpStatusCode?: number };
}
const details = (error: unknown): MaybeAws => (typeof error === 'object' && error !== null ? error : {});
const statusOf = (error: unknown): number => details(error).$metadata?.httpStatusCode ?? 0;

const asked = <T>(request: () => Promise<T>): Promise<T> => orUnavailable('the object store', request);

const isMissing = (error: unknown): boolean =>
  /^(NoSuchKey|NotFound)$/.test(details(error).name ?? '') || statusOf(error) === 404;

/**
 * Objects in a bucket of S3, or of a store that speaks it, under `prefix` ('' or ending in `/`). `ifAbsent` is S3's
 * own conditional write (If-None-Match: *).
 */
export function s3Objects(bucket: string, prefix = '', client = new S3Client(waits())): ObjectStore {
  const at = (key: string) => {
    assertKey(key);
    return { Bucket: bucket, Key: `${prefix}${key}` };
  };

  async function putOnce(
    key: string,
    bytes: Uint8Array,
    options: Parameters<ObjectStore['put']>[2],
  ): Promise<'written' | 'exists' | 'conflict'> {
    try {
      await client.send(
        new PutObjectCommand({
          ...at(key),
          Body: bytes,
          ContentType: options.contentType,
          ...(options.cacheControl === undefined ? {} : { CacheControl: options.cacheControl }),
          ...(options.ifAbsent ? { IfNoneMatch: '*' } : {}),
        }),
      );
      return 'written';
    } catch (error) {
      if (options.ifAbsent && statusOf(error) === 412) return 'exists';
      if (options.ifAbsent && statusOf(error) === 409) return 'conflict';
      throw error;
    }
  }

  return {
    put: (key, bytes, options) =>
      asked(async () => {
        for (let tried = 0; tried < conflictTries; tried += 1) {
          const outcome = await putOnce(key, bytes, options);
          if (outcome !== 'conflict') return { written: outcome === 'written' };
        }
        throw new StoreUnavailable(`others keep writing ${key} at the same time`);
      }),
    get: (key) =>
      asked(async () => {
        try {
          const { Body } = await client.send(new GetObjectCommand(at(key)));
          if (!Body) throw new StoreUnavailable(`the answer for ${key} had no body`);
          return { bytes: await Body.transformToByteArray() };
        } catch (error) {
          if (isMissing(error)) return null;
          throw error;
        }
      }),
    head: (key) =>
      asked(async () => {
        try {
          const { ContentLength, LastModified } = await client.send(new HeadObjectCommand(at(key)));
          return {
            sizeBytes: ContentLength ?? 0,
            ...(LastModified === undefined ? {} : { writtenAt: wholeSecond(LastModified) }),
          };
        } catch (error) {
          if (isMissing(error)) return null;
          throw error;
        }
      }),
    list: (under) =>
      asked(async () => {
        const keys: string[] = [];
        let token: string | undefined;
        for (let page = 0; page < mostPages; page += 1) {
          const answer = await client.send(
            new ListObjectsV2Command({
              Bucket: bucket,
              Prefix: `${prefix}${under}`,
              ...(token === undefined ? {} : { ContinuationToken: token }),
            }),
          );
          for (const { Key } of answer.Contents ?? [])
            if (Key !== undefined) keys.push(Key.slice(prefix.length));
          token = answer.NextContinuationToken;
          if (token === undefined) return inByteOrder(keys);
        }
        throw new RangeError(`more than ${mostPages} pages of keys under ${under}`);
      }),
    delete: async (key) => {
      await asked(() => client.send(new DeleteObjectCommand(at(key))));
    },
  };
}

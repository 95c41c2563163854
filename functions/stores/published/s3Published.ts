import {
  GetObjectCommand,
  HeadObjectCommand,
  PutObjectCommand,
  S3ServiceException,
  type S3Client,
} from '@aws-sdk/client-s3';
import { StoreUnavailable } from '../faults.ts';
import { assertKey, type PublishedHead, type PublishedStore } from './published.ts';

const AGE = 'checked-at';

/** The condition failed (412), or another conditional write of the same key was under way (409). */
const isLost = (error: unknown): boolean =>
  error instanceof S3ServiceException &&
  (error.$metadata.httpStatusCode === 412 || error.$metadata.httpStatusCode === 409);
const isMissing = (error: unknown): boolean =>
  error instanceof S3ServiceException && error.$metadata.httpStatusCode === 404;

/**
 * Published objects in a bucket, under a prefix. Conditions are the store's own (`If-Match` and `If-None-Match` on
 * PutObject), so two publishers cannot overwrite each other unseen.
 */
export function s3Published(client: S3Client, bucket: string, prefix: string): PublishedStore {
  const at = (key: string): { Bucket: string; Key: string } => {
    assertKey(key);
    return { Bucket: bucket, Key: prefix === '' ? key : `${prefix}/${key}` };
  };
  async function orNull<T>(what: string, ask: () => Promise<T>, empty: (error: unknown) => boolean) {
    try {
      return await ask();
    } catch (error) {
      if (empty(error)) return null;
      throw new StoreUnavailable(what, { cause: error });
    }
  }
  const headOf = (answer: {
    ETag?: string | undefined;
    Metadata?: Record<string, string> | undefined;
  }): PublishedHead => ({
    etag: answer.ETag ?? '',
    checkedAt: answer.Metadata?.[AGE] ?? null,
  });

  return {
    head: (key) =>
      orNull(
        `cannot read ${key}`,
        async () => headOf(await client.send(new HeadObjectCommand(at(key)))),
        isMissing,
      ),
    get: (key) =>
      orNull(
        `cannot read ${key}`,
        async () => {
          const answer = await client.send(new GetObjectCommand(at(key)));
          if (!answer.Body) throw new Error('an answer without a body');
          return {
            ...headOf(answer),
            bytes: await answer.Body.transformToByteArray(),
            contentType: answer.ContentType ?? '',
            cacheControl: answer.CacheControl ?? '',
          };
        },
        isMissing,
      ),
    put: (key, { bytes, contentType, cacheControl, checkedAt }, expected) =>
      orNull(
        `cannot write ${key}`,
        async () => {
          const answer = await client.send(
            new PutObjectCommand({
              ...at(key),
              Body: bytes,
              ContentType: contentType,
              CacheControl: cacheControl,
              ...(checkedAt === null ? {} : { Metadata: { [AGE]: checkedAt } }),
              ...(expected === null ? { IfNoneMatch: '*' } : { IfMatch: expected }),
            }),
          );
          return answer.ETag ?? '';
        },
        // With If-Match, an object that is gone answers 404: it is not the expected one either.
        (error) => isLost(error) || (expected !== null && isMissing(error)),
      ),
  };
}

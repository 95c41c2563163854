import { StoreUnavailable } from './faults.ts';

/** Answers of a service that say "not now": the same request may be sent again. */
const notNow = new Set([
  'ThrottlingException',
  'ProvisionedThroughputExceededException',
  'RequestLimitExceeded',
  'LimitExceededException',
  'TooManyRequestsException',
  'SlowDown',
  'RequestTimeout',
  'InternalServerError',
  'ServiceUnavailable',
  'ServiceUnavailableException',
  'TransactionConflictException',
  'NetworkingError',
  'TimeoutError',
  'AbortError',
]);
/** What node says when the other end is not there, or went away in the middle. */
const noConnection =
  /^(ECONNREFUSED|ECONNRESET|ECONNABORTED|EPIPE|ETIMEDOUT|ENOTFOUND|EAI_AGAIN|EHOSTUNREACH|ENETUNREACH)$/;
const tooManyRequests = 429;

interface MaybeAws {
  readonly name?: string;
  readonly code?: string;
  readonly $metadata?: { readonly httpStatusCode?: number };
}

/** Whether a service was away, slow or had too much to do, whatever was asked of it. */
export function isOutage(error: unknown): boolean {
  if (typeof error !== 'object' || error === null) return false;
  const { name, code, $metadata } = error as MaybeAws;
  const status = $metadata?.httpStatusCode ?? 0;
  return (
    notNow.has(name ?? '') ||
    noConnection.test(code ?? '') ||
    status >= 500 ||
    status === tooManyRequests ||
    // A connection cut in the middle of an answer, or several addresses that all refused.
    (error instanceof Error && /socket hang up/.test(error.message)) ||
    (error instanceof AggregateError && error.errors.some(isOutage))
  );
}

/**
 * Runs one request to `service`. When the SDK has given up after its own bounded retries, an outage becomes
 * `StoreUnavailable`; every other error (a wrong request, a missing table, no permission) is a fault of ours and stays
 * as it is.
 */
export async function orUnavailable<T>(service: string, request: () => Promise<T>): Promise<T> {
  try {
    return await request();
  } catch (error) {
    if (isOutage(error)) throw new StoreUnavailable(`${service} did not answer`, { cause: error });
    throw error;
  }
}

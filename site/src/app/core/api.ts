import type { EvidenceAddress } from '../../../../shared/evidence/address.ts';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { preferences } from './preferences.ts';
import { session, tokenRefused } from './session.ts';

/** What came of a request. A store outage and no signal are the same to a person: not sent, try again. */
export type Answer<T> =
  | { readonly outcome: 'ok'; readonly status: number; readonly value: T }
  | {
      readonly outcome: 'refused';
      readonly status: number;
      readonly title: string;
      readonly problems: readonly Problem[];
    }
  | { readonly outcome: 'sign-in' }
  | {
      readonly outcome: 'unreachable';
      readonly reason: 'no-connection' | 'too-slow' | 'server-trouble' | 'busy';
      /** So long the server asked to be left alone (`Retry-After`, RFC 9110, 10.2.3). */
      readonly retryAfterMs?: number;
      /** What it said of why, where it did. */
      readonly problems?: readonly Problem[];
    };

/** Longer than a slow network needs, shorter than a person waits at a curb. */
const PATIENCE_MS = 20_000;

interface ProblemDocument {
  readonly title?: string;
  readonly problems?: readonly Problem[];
}

async function readDocument(response: Response): Promise<ProblemDocument> {
  try {
    return (await response.json()) as ProblemDocument;
  } catch {
    return {};
  }
}

function headers(token: string | undefined, json: boolean): Headers {
  const all = new Headers({ accept: 'application/json', 'accept-language': preferences.get().locale });
  if (token !== undefined) all.set('authorization', `Bearer ${token}`);
  if (json) all.set('content-type', 'application/json');
  return all;
}

/** The largest file, 100 MB, on a line of 3 Mbit/s; nobody waits longer for a document. */
const DOWNLOAD_PATIENCE_MS = 270_000;
/** The slowest line on which a photo is still sent: 64 kbit/s. */
const SLOWEST_BYTES_PER_MS = 8;

async function request(
  path: string,
  init: RequestInit,
  patienceMs = PATIENCE_MS,
): Promise<Response | Answer<never>> {
  try {
    return await fetch(path, { ...init, signal: AbortSignal.timeout(patienceMs), cache: 'no-store' });
  } catch (error) {
    const tooSlow = error instanceof DOMException && error.name === 'TimeoutError';
    return { outcome: 'unreachable', reason: tooSlow ? 'too-slow' : 'no-connection' };
  }
}

let beforeAsking: () => Promise<void> = () => Promise.resolve();
/** What is done before each request: a sign-in that ends soon is renewed. Said from outside, because it asks by itself. */
export function askAfter(first: () => Promise<void>): void {
  beforeAsking = first;
}

/** Seconds, as our server and the gateway say it; a date, which neither does, is passed over. */
const retryAfterOf = (response: Response): number | undefined => {
  const seconds = Number(response.headers.get('retry-after') ?? '');
  return Number.isInteger(seconds) && seconds > 0 ? seconds * 1000 : undefined;
};

async function call<T>(path: string, method: 'GET' | 'POST', body?: unknown): Promise<Answer<T>> {
  await beforeAsking();
  const token = session.get()?.token;
  const response = await request(path, {
    method,
    headers: headers(token, body !== undefined),
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  if (!(response instanceof Response)) return response;
  if (response.ok) {
    try {
      return { outcome: 'ok', status: response.status, value: (await response.json()) as T };
    } catch {
      // Cut off on the way, or not our server (a sign-in page of a hotel's network): no answer was had.
      return { outcome: 'unreachable', reason: 'no-connection' };
    }
  }
  // Our server says why it refuses; a page (of a hotel's network that wants its terms agreed to) is no answer of it.
  const isOurs = /json/.test(response.headers.get('content-type') ?? '');
  if (response.status < 500 && !isOurs) return { outcome: 'unreachable', reason: 'no-connection' };
  if (response.status === 401) {
    if (token !== undefined) tokenRefused(token);
    return { outcome: 'sign-in' };
  }
  const retryAfterMs = retryAfterOf(response);
  if (response.status >= 500)
    return { outcome: 'unreachable', reason: 'server-trouble', ...(retryAfterMs && { retryAfterMs }) };
  // Nothing is wrong with what was sent: it waits, and nobody has to mend it.
  if (response.status === 429) {
    const { problems = [] } = await readDocument(response);
    return { outcome: 'unreachable', reason: 'busy', problems, ...(retryAfterMs && { retryAfterMs }) };
  }
  const document = await readDocument(response);
  return {
    outcome: 'refused',
    status: response.status,
    title: document.title ?? '',
    problems: document.problems ?? [],
  };
}

export const getJson = <T>(path: string): Promise<Answer<T>> => call<T>(path, 'GET');
export const postJson = <T>(path: string, body: unknown): Promise<Answer<T>> => call<T>(path, 'POST', body);

/** A document behind the sign-in, as bytes; null when it could not be had. */
export async function getBytes(path: string): Promise<Blob | null> {
  await beforeAsking();
  const response = await request(path, { method: 'GET', headers: headers(session.get()?.token, false) });
  return response instanceof Response && response.ok ? response.blob() : null;
}

/** The bytes at a signed address, which is asked without the sign-in's token; null when they could not be had. */
export async function bytesAt({ url }: Pick<EvidenceAddress, 'url'>): Promise<Blob | null> {
  const response = await request(url, { method: 'GET', credentials: 'omit' }, DOWNLOAD_PATIENCE_MS);
  return response instanceof Response && response.ok ? response.blob() : null;
}

/** A photo or document as it came; null when it could not be had. */
export async function getOriginal(sha256: string): Promise<Blob | null> {
  const answer = await getJson<EvidenceAddress>(`/api/evidence/${sha256}`);
  return answer.outcome === 'ok' ? bytesAt(answer.value) : null;
}

/** Puts bytes where a signed link says. True when they arrived. */
export async function putBytes(
  url: string,
  bytes: Blob,
  linkHeaders: Readonly<Record<string, string>>,
): Promise<boolean> {
  // As long as its size needs: a limit for all would keep a large photo from ever leaving over a slow line.
  const response = await request(
    url,
    { method: 'PUT', headers: linkHeaders, body: bytes },
    PATIENCE_MS + bytes.size / SLOWEST_BYTES_PER_MS,
  );
  // Precondition failed: the store has these bytes already (RFC 9110, 13.1.2 with If-None-Match: *).
  return response instanceof Response && (response.ok || response.status === 412);
}

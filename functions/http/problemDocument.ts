import type { Problem } from '../../shared/problems/problem.ts';
import { say, sayProblem, type Locale } from '../../shared/words/index.ts';
import type { Reason, Refused } from './refused.ts';

/** The HTTP status of each reason: the only place where the work's outcomes meet HTTP. */
export const statusOf: Readonly<Record<Reason, 400 | 401 | 403 | 404 | 409 | 413 | 422 | 429 | 500 | 503>> = {
  'not-json': 400,
  'not-signed-in': 401,
  'not-allowed': 403,
  'not-found': 404,
  clash: 409,
  'already-corrected': 409,
  taken: 409,
  'too-large': 413,
  'too-many': 429,
  invalid: 422,
  unavailable: 503,
  fault: 500,
};

/** Seconds after which it is worth trying again. A store's outage is usually over in less. */
const RETRY_AFTER_S = 5;

/** RFC 9457 problem details, with our `problems` and, on some, one more member (`field`, `by`, `reference`). */
export interface ProblemDocument {
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly problems: readonly (Problem & { readonly message: string })[];
  readonly [extra: string]: unknown;
}

/** More than this and nobody reads them; the first ones are the outermost. */
const MOST_PROBLEMS = 200;

export function problemDocument(
  locale: Locale,
  { reason, problems, extra }: Pick<Refused, 'reason' | 'problems' | 'extra'>,
): ProblemDocument {
  return {
    ...extra,
    type: `/problems/${reason}`,
    title: say(locale, `refused.${reason}.title`),
    status: statusOf[reason],
    detail: say(locale, `refused.${reason}.detail`, extra),
    problems: problems.slice(0, MOST_PROBLEMS).map((item) => ({
      path: item.path,
      code: item.code,
      params: item.params,
      message: sayProblem(locale, item),
    })),
  };
}

export function problemResponse(
  locale: Locale,
  refused: Pick<Refused, 'reason' | 'problems' | 'extra'> & Partial<Pick<Refused, 'retryAfterS'>>,
): Response {
  const headers = new Headers({
    'content-type': 'application/problem+json',
    'content-language': locale,
    'cache-control': 'no-store',
    'x-content-type-options': 'nosniff',
  });
  const retryAfterS = refused.retryAfterS ?? (refused.reason === 'unavailable' ? RETRY_AFTER_S : undefined);
  if (retryAfterS !== undefined) headers.set('retry-after', String(retryAfterS));
  if (refused.reason === 'not-signed-in') headers.set('www-authenticate', 'Bearer');
  return new Response(JSON.stringify(problemDocument(locale, refused)), {
    status: statusOf[refused.reason],
    headers,
  });
}

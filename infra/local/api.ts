import type { IncomingMessage } from 'node:http';
import type { HttpHandler } from '../../functions/http/lambda.ts';
import { problemResponse } from '../../functions/http/problemDocument.ts';
import { routeKey, type Family } from '../../shared/deployment/routes.ts';
import { problem } from '../../shared/problems/problem.ts';
import { localeOf } from '../../functions/http/locale.ts';
import type { Reason } from '../../functions/http/refused.ts';
import { describeError, type Log } from '../../functions/log/log.ts';
import type { Locale } from '../../shared/words/index.ts';
import { answer, BodyTooLarge, readBody, type Answer } from './answer.ts';
import { eventOf } from './events.ts';
import { matchRoute } from './router.ts';

/** As much as API Gateway takes; the handlers' own limits are lower. */
const GATEWAY_BYTES = 10 * 1024 * 1024;

export interface Gateway {
  readonly handlers: Readonly<Record<Family, HttpHandler>>;
  readonly log: Log;
  readonly now: () => Date;
  readonly locale: Locale;
}

/** What API Gateway does: finds the route, makes the event, calls the family's handler, hands its answer on. */
export async function answerApi(
  request: IncomingMessage,
  { handlers, log, now, locale }: Gateway,
): Promise<Answer> {
  const language = localeOf(request.headers['accept-language'], locale);
  const refusal = async (
    reason: Reason,
    code: string,
    params: Record<string, string | number> = {},
  ): Promise<Answer> => {
    const response = problemResponse(language, { reason, problems: [problem(code, '', params)], extra: {} });
    return answer(response.status, Object.fromEntries(response.headers), await response.text());
  };
  const path = (request.url ?? '/').split('?')[0] ?? '/';
  const match = matchRoute(request.method ?? 'GET', path);
  if (!match) return refusal('not-found', 'no-such-route');
  try {
    const body = await readBody(request, GATEWAY_BYTES);
    const { route, pathParameters } = match;
    const result = await handlers[route.family](
      eventOf(request, { routeKey: routeKey(route), pathParameters, body, now: now() }),
    );
    const cookies = result.cookies === undefined ? {} : { 'set-cookie': result.cookies };
    return answer(
      result.statusCode ?? 200,
      {
        ...Object.fromEntries(
          Object.entries(result.headers ?? {}).map(([name, value]) => [name, String(value)]),
        ),
        ...cookies,
      },
      Buffer.from(result.body ?? '', result.isBase64Encoded === true ? 'base64' : 'utf8'),
    );
  } catch (error) {
    if (error instanceof BodyTooLarge) {
      const tooLarge = await refusal('too-large', 'body-too-large', { maximumKb: GATEWAY_BYTES / 1024 });
      return { ...tooLarge, headers: { ...tooLarge.headers, connection: 'close' } };
    }
    // Lambda answers a handler that throws with a bare 502; here at least the log says what it was.
    log({ level: 'error', event: 'handler-threw', family: match.route.family, ...describeError(error) });
    const reference = crypto.randomUUID();
    return refusal('fault', 'our-fault', { reference });
  }
}

import type { Fact } from '../../../../shared/submissions/submission.ts';
import { say, type Locale } from '../../../../shared/words/index.ts';
import { readKeys, serverUsing } from '../../dataFolder.ts';
import type { ApiAccess } from '../../deployed/access.ts';
import { createIssuer } from '../../issuer.ts';
import { RefusedStart } from '../../refusedStart.ts';
import type { ModelServer } from './run.ts';

/** Longer than a busy server takes. */
const PATIENCE_MS = 15_000;

/** The server that uses this data folder, asked through its API by somebody who may record models; null when none runs. */
export async function modelServer(
  root: string,
  personId: string,
  locale: Locale,
): Promise<ModelServer | null> {
  const running = await serverUsing(root);
  if (!running) return null;
  const issuer = await createIssuer((await readKeys(root)).issuerKey);
  const token = await issuer.tokenFor({ personId, name: personId, roles: ['manager'] });
  return modelServerThere({ origin: running.origin, token }, locale);
}

/** The same of a server anywhere, asked by whoever signed in there. */
export function modelServerThere({ origin, token }: ApiAccess, locale: Locale): ModelServer {
  const ask = (path: string, body?: unknown): Promise<Response> =>
    fetch(origin + path, {
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        authorization: `Bearer ${token}`,
        'accept-language': locale,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
  return {
    async models() {
      const answer = await ask('/api/models').catch(() => {
        throw new RefusedStart('command.deployment-silent', { address: origin });
      });
      if (!answer.ok) throw new Error(`/api/models answered ${answer.status}: ${await answer.text()}`);
      return ((await answer.json()) as { models: Awaited<ReturnType<ModelServer['models']>> }).models;
    },
    async send(submission: Fact<'hydrant-model'>) {
      try {
        const answer = await ask('/api/submissions', submission);
        if (answer.ok) return null;
        const { title, problems = [] } = (await answer.json()) as {
          title?: string;
          problems?: readonly { path: string; message: string }[];
        };
        return [
          title ?? String(answer.status),
          ...problems.map(({ path, message }) => `${path}: ${message}`),
        ].join(' ');
      } catch (error) {
        // What the platform says of a cut line ("fetch failed") tells nobody anything.
        const timeout = error instanceof Error && error.name === 'TimeoutError';
        return say(locale, 'models.no-answer', { timeout: String(timeout), seconds: PATIENCE_MS / 1000 });
      }
    },
  };
}

import type { Fact } from '../../../shared/submissions/submission.ts';
import { currentSchemaVersion } from '../../../shared/submissions/envelope.ts';
import { strikeTrial, trialPhoto } from './trial.ts';

/** What a check needs: how to ask, and a trial of this run's own. */
export interface SmokeContext {
  readonly origin: string;
  /** Null: only what needs no sign-in is looked at. */
  readonly token: string | null;
  readonly now: () => Date;
  readonly newId: () => string;
  /** How long a deployment may take from a fact to what is computed of it. */
  readonly settleMs: number;
}

/** Each check by its name in the catalogue (`smoke.<name>`), in order; null: well, else what was found instead. */
export type SmokeCheck =
  'page' | 'headers' | 'health' | 'utility' | 'closed' | 'manager' | 'taken' | 'once' | 'photo' | 'apart';

type Run = (state: SmokeState) => Promise<string | null>;
interface SmokeState extends SmokeContext {
  readonly strike: Fact<'strike'>;
  readonly ask: (path: string, init?: RequestInit) => Promise<Response>;
  readonly post: (path: string, body: unknown) => Promise<Response>;
}

const said = async (response: Response): Promise<string> =>
  `${response.status} ${(await response.text()).slice(0, 200)}`;

/** What anybody may see. */
export const openChecks: Readonly<Partial<Record<SmokeCheck, Run>>> = {
  page: async ({ ask }) => {
    const response = await ask('/', { headers: {} });
    const text = await response.text();
    return response.ok && text.includes('<html') ? null : `${response.status} ${text.slice(0, 80)}`;
  },
  // What CloudFront adds; this machine's own server has no TLS, so it says nothing of it.
  headers: async ({ ask, origin }) => {
    const { headers } = await ask('/', { headers: {} });
    const wanted = ['content-security-policy', 'x-content-type-options'];
    const missing = [...wanted, ...(origin.startsWith('https:') ? ['strict-transport-security'] : [])].filter(
      (name) => !headers.has(name),
    );
    return missing.length === 0 ? null : missing.join(', ');
  },
  health: async ({ ask }) => {
    const response = await ask('/api/health', { headers: {} });
    return response.ok ? null : said(response);
  },
  utility: async ({ ask }) => {
    const response = await ask('/api/utility', { headers: {} });
    return response.ok ? null : said(response);
  },
  closed: async ({ ask }) => {
    const [bare, wrong] = [
      await ask('/api/strikes', { headers: {} }),
      await ask('/api/strikes', { headers: { authorization: 'Bearer e30.e30.e30' } }),
    ];
    return bare.status === 401 && wrong.status === 401 ? null : `${bare.status}, ${wrong.status}`;
  },
};

/** What a manager's sign-in is needed for. */
export const signedInChecks: Readonly<Partial<Record<SmokeCheck, Run>>> = {
  manager: async ({ ask }) => {
    const response = await ask('/api/me');
    if (!response.ok) return said(response);
    const { roles } = (await response.json()) as { roles: readonly string[] };
    return roles.includes('manager') ? null : roles.join(', ');
  },
  taken: async ({ post, strike }) => {
    const response = await post('/api/submissions', strike);
    return response.status === 201 ? null : said(response);
  },
  once: async ({ post, strike }) => {
    const again = await post('/api/submissions', strike);
    if (again.status !== 200) return said(again);
    const other = await post('/api/submissions', {
      ...strike,
      body: { ...strike.body, placeDescription: 'Another place' },
    });
    return other.status === 409 ? null : said(other);
  },
  photo: async ({ post, ask, strike }) => {
    const { sha256, bytes } = trialPhoto;
    const where = (): Promise<Response> =>
      post('/api/evidence/uploads', {
        subject: strike.subject,
        submissionId: strike.submissionId,
        sha256,
      });
    const asked = await where();
    if (!asked.ok) return said(asked);
    const { upload } = (await asked.json()) as {
      upload?: { url: string; headers: Record<string, string> };
    };
    if (upload) {
      // Its hash is its name, so every run's photo is the same one and nothing piles up behind the lock.
      const sent = await ask(upload.url, {
        method: 'PUT',
        headers: upload.headers,
        body: Buffer.from(bytes),
      });
      if (!sent.ok && sent.status !== 412) return said(sent);
    }
    const again = await where();
    const { state } = (await again.json()) as { state?: string };
    return state === 'arrived' ? null : `${again.status} ${state ?? ''}`;
  },
  apart: async ({ ask, strike, settleMs }) => {
    await new Promise((resolve) => setTimeout(resolve, settleMs));
    const { strikeId } = strike.subject as { strikeId: string };
    for (const path of ['/api/strikes', '/api/dispatch', '/api/claims', '/']) {
      const response = await ask(path);
      const text = await response.text();
      if (!response.ok) return `${path}: ${response.status} ${text.slice(0, 100)}`;
      if (text.includes(strikeId) || text.includes(strike.body.placeDescription ?? strikeId)) return path;
    }
    return null;
  },
};

/** Runs the checks in order and tells of each; true when all are well. Those that build on one that failed still run. */
export async function smoke(
  context: SmokeContext,
  tell: (check: SmokeCheck, found: string | null) => void,
): Promise<boolean> {
  const authorized: Record<string, string> =
    context.token === null ? {} : { authorization: `Bearer ${context.token}` };
  const ask: SmokeState['ask'] = (path, init = {}) =>
    fetch(new URL(path, context.origin), {
      headers: authorized,
      signal: AbortSignal.timeout(30_000),
      ...init,
    });
  const post: SmokeState['post'] = (path, body) =>
    ask(path, {
      method: 'POST',
      headers: { ...authorized, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    });
  const strike = strikeTrial(context.newId(), context.newId(), context.now(), currentSchemaVersion);
  const state: SmokeState = { ...context, strike, ask, post };
  let well = true;
  const checks = { ...openChecks, ...(context.token === null ? {} : signedInChecks) };
  for (const [name, run] of Object.entries(checks) as [SmokeCheck, Run][]) {
    const found = await run(state).catch((error: unknown) =>
      error instanceof Error
        ? `${error.message} ${error.cause instanceof Error ? error.cause.message : ''}`.trim()
        : String(error),
    );
    well &&= found === null;
    tell(name, found);
  }
  return well;
}

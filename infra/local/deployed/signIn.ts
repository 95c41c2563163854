import { createHash, randomBytes } from 'node:crypto';
import { createServer } from 'node:http';
import { commandsReturnTo } from '../../../shared/deployment/signIn.ts';
import { RefusedStart } from '../refusedStart.ts';
import { exchange, keepSignIn, provider, type Kept } from './access.ts';

export interface SignInDeps {
  readonly variables: Readonly<Record<string, string | undefined>>;
  /** Shows the address that the person opens. */
  readonly show: (address: string) => void;
  /** What the browser says at the end. */
  readonly done: string;
}

/** As long as somebody looks for a telephone with the second factor on it. */
const PATIENCE_MS = 10 * 60_000;

/**
 * Signs somebody in at a deployment from a terminal: their browser goes to the sign-in page and comes back to this machine
 * (RFC 8252 7.3, code with PKCE). Returns the file in which the sign-in is kept.
 */
export async function signInAt(origin: string, { variables, show, done }: SignInDeps): Promise<string> {
  const answer = await fetch(`${origin}/api/utility`, { signal: AbortSignal.timeout(15_000) }).catch(
    () => null,
  );
  if (!answer?.ok) throw new RefusedStart('command.deployment-silent', { address: origin });
  const at = provider.nullable().parse(((await answer.json()) as { signIn?: unknown }).signIn ?? null);
  if (at === null) throw new RefusedStart('command.no-sign-in-page', { address: origin });
  const [state, verifier] = [randomBytes(32).toString('base64url'), randomBytes(32).toString('base64url')];
  const asked = new URLSearchParams({
    response_type: 'code',
    client_id: at.clientId,
    redirect_uri: commandsReturnTo,
    scope: 'openid profile email',
    state,
    code_challenge: createHash('sha256').update(verifier).digest('base64url'),
    code_challenge_method: 'S256',
  });
  const code = await codeFor({ state, done, origin }, () => {
    show(`${at.page}/oauth2/authorize?${asked.toString()}`);
  });
  const tokens = await exchange(at, {
    grant_type: 'authorization_code',
    code,
    redirect_uri: commandsReturnTo,
    code_verifier: verifier,
  });
  if (!tokens?.refresh_token) throw new RefusedStart('command.sign-in-refused', { address: origin });
  const signIn: Kept = { ...at, idToken: tokens.id_token, refreshToken: tokens.refresh_token };
  return keepSignIn(origin, signIn, variables);
}

/** Waits on this machine for the browser that comes back with the answer to this very question. */
async function codeFor(
  { state, done, origin }: { readonly state: string; readonly done: string; readonly origin: string },
  ready: () => void,
): Promise<string> {
  const { port, pathname: path } = new URL(commandsReturnTo);
  const { promise, resolve, reject } = Promise.withResolvers<string>();
  const server = createServer((request, response) => {
    const { pathname, searchParams } = new URL(request.url ?? '', commandsReturnTo);
    const code = searchParams.get('code');
    if (pathname !== path || searchParams.get('state') !== state) return void response.writeHead(404).end();
    response.setHeader('content-type', 'text/plain; charset=utf-8');
    response.end(code === null ? '' : done);
    if (code === null) reject(new RefusedStart('command.sign-in-refused', { address: origin }));
    else resolve(code);
  });
  server.on('error', reject);
  server.listen(Number(port), '127.0.0.1', ready);
  const patience = setTimeout(() => {
    reject(new RefusedStart('command.sign-in-waited', { minutes: PATIENCE_MS / 60_000 }));
  }, PATIENCE_MS);
  try {
    return await promise;
  } finally {
    clearTimeout(patience);
    server.closeAllConnections();
    server.close();
  }
}

import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface FakeProvider {
  readonly page: string;
  /** What the token address was asked, newest last. */
  readonly asked: URLSearchParams[];
  /** The next answers of the token address instead of the usual; `tokenless`: a success without the token. */
  readonly answers: (number | 'cut' | 'tokenless')[];
  /** Refresh tokens that were taken back. */
  readonly revoked: string[];
  close(): Promise<void>;
}

/**
 * A sign-in page as RFC 6749, 7009 and 7636 describe one, with the addresses of the managed sign-in pages of Amazon Cognito
 * (developer guide, "Managed login and user pool endpoints": /oauth2/authorize, /oauth2/token, /oauth2/revoke, /logout). It signs everybody in at
 * once, and checks what such a page checks: the address to return to, the code used once, and the verifier.
 */
export async function fakeProvider(options: {
  readonly clientId: string;
  readonly tokenFor: (renewal: boolean) => Promise<string>;
  readonly port?: number;
}): Promise<FakeProvider> {
  const codes = new Map<string, { readonly challenge: string; readonly returnTo: string }>();
  const refreshTokens = new Set<string>();
  const asked: URLSearchParams[] = [];
  const answers: (number | 'cut' | 'tokenless')[] = [];
  const revoked: string[] = [];
  const server = createServer((request, response) => {
    const { pathname, searchParams } = new URL(request.url ?? '', 'http://provider.invalid');
    response.setHeader('access-control-allow-origin', '*');
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const body = new URLSearchParams(Buffer.concat(chunks).toString());
      void (async () => {
        if (pathname === '/oauth2/authorize') {
          const code = `code-${codes.size + 1}`;
          const returnTo = searchParams.get('redirect_uri') ?? '';
          codes.set(code, { challenge: searchParams.get('code_challenge') ?? '', returnTo });
          const back = new URLSearchParams({ code, state: searchParams.get('state') ?? '' });
          response.writeHead(302, { location: `${returnTo}?${back.toString()}` }).end();
        } else if (pathname === '/oauth2/token') {
          asked.push(body);
          const instead = answers.shift();
          if (instead === 'cut') return void request.socket.destroy();
          if (instead === 'tokenless') return void response.end('{"token_type":"Bearer"}');
          if (instead !== undefined) return void response.writeHead(instead).end();
          const renewal = body.get('grant_type') === 'refresh_token';
          const kept = codes.get(body.get('code') ?? '');
          codes.delete(body.get('code') ?? '');
          const proves = createHash('sha256')
            .update(body.get('code_verifier') ?? '')
            .digest('base64url');
          const good = renewal
            ? refreshTokens.has(body.get('refresh_token') ?? '')
            : kept?.challenge === proves && kept.returnTo === body.get('redirect_uri');
          if (!good || body.get('client_id') !== options.clientId)
            return void response.writeHead(400).end('{"error":"invalid_grant"}');
          const refreshToken = `refresh-${refreshTokens.size + 1}`;
          if (!renewal) refreshTokens.add(refreshToken);
          response.setHeader('content-type', 'application/json');
          response.end(
            JSON.stringify({
              id_token: await options.tokenFor(renewal),
              ...(renewal ? {} : { refresh_token: refreshToken }),
              token_type: 'Bearer',
            }),
          );
        } else if (pathname === '/oauth2/revoke') {
          revoked.push(body.get('token') ?? '');
          refreshTokens.delete(body.get('token') ?? '');
          response.end();
        } else if (pathname === '/logout') {
          response.writeHead(302, { location: searchParams.get('logout_uri') ?? '' }).end();
        } else response.writeHead(404).end();
      })();
    });
  });
  await new Promise<void>((resolve) => server.listen(options.port ?? 0, '127.0.0.1', resolve));
  return {
    page: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    asked,
    answers,
    revoked,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface RecordingServices {
  readonly endpoint: string;
  /** What was asked since the last call, as `action`. */
  take(): string[];
  close(): Promise<void>;
}

/**
 * The mail and text services, as far as one asks them what the account may do: an account out of its sandboxes.
 * Paths and answers: SES API v2 reference (GetAccount, GetEmailIdentity), SNS API reference (GetSMSSandboxAccountStatus).
 */
export async function recordingServices(): Promise<RecordingServices> {
  let asked: string[] = [];
  const server = createServer((request, response) => {
    const chunks: Buffer[] = [];
    request.on('data', (chunk: Buffer) => chunks.push(chunk));
    request.on('end', () => {
      const { method, url = '' } = request;
      const action = new URLSearchParams(Buffer.concat(chunks).toString()).get('Action');
      if (method === 'GET' && url.startsWith('/v2/email/account')) {
        asked.push('ses:GetAccount');
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify({ ProductionAccessEnabled: true, SendingEnabled: true }));
      } else if (method === 'GET' && url.startsWith('/v2/email/identities/')) {
        asked.push(`ses:GetEmailIdentity ${decodeURIComponent(url.slice('/v2/email/identities/'.length))}`);
        response.setHeader('content-type', 'application/json');
        response.end(JSON.stringify({ VerifiedForSendingStatus: true }));
      } else if (action === 'GetSMSSandboxAccountStatus') {
        asked.push('sns:GetSMSSandboxAccountStatus');
        response.setHeader('content-type', 'text/xml');
        response.end(
          '<GetSMSSandboxAccountStatusResponse xmlns="http://sns.amazonaws.com/doc/2010-03-31/"><GetSMSSandboxAccountStatusResult><IsInSandbox>false</IsInSandbox></GetSMSSandboxAccountStatusResult></GetSMSSandboxAccountStatusResponse>',
        );
      } else response.writeHead(500).end();
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    take: () => {
      const all = asked;
      asked = [];
      return all;
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}

import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { KMSClient } from '@aws-sdk/client-kms';
import { LambdaClient } from '@aws-sdk/client-lambda';
import { S3Client } from '@aws-sdk/client-s3';
import { SESv2Client } from '@aws-sdk/client-sesv2';
import { SNSClient } from '@aws-sdk/client-sns';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { invokeLater } from '../../functions/stores/jobs/invokeLater.ts';
import { awsSendingAccount } from '../../functions/stores/mail/awsSendingAccount.ts';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import { sesSender } from '../../functions/stores/mail/sesSender.ts';
import { s3Objects } from '../../functions/stores/objects/s3.ts';
import { waits } from '../../functions/stores/patience.ts';
import { s3Published } from '../../functions/stores/published/s3Published.ts';
import { kmsSigner } from '../../functions/stores/signing/kmsSigner.ts';
import { snsTexts } from '../../functions/stores/texts/snsTexts.ts';

describe('a line that has gone dead', () => {
  let server: Server;
  let at: { endpoint: string; region: string; credentials: { accessKeyId: string; secretAccessKey: string } };
  let asked = 0;
  beforeAll(async () => {
    // Takes every request, and never says a word.
    server = createServer(() => void (asked += 1));
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    at = {
      endpoint: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
      region: 'us-east-1',
      credentials: { accessKeyId: 'a', secretAccessKey: 'b' },
    };
  });
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  const quick = { silentMs: 100 };

  it('is given up by each client, after as many tries as it is set to make', async () => {
    const mail = { to: 'clerk@example.com', subject: 's', text: 't' };
    const text = { recipientId: 'r', phone: '1', text: 't' };
    const s3 = () => new S3Client({ ...at, forcePathStyle: true, ...waits(quick) });
    const once = waits({ ...quick, maxAttempts: 1 });
    type Ask = readonly [string, () => Promise<unknown>, new (...given: never[]) => Error, number];
    const asks: readonly Ask[] = [
      ['objects', () => s3Objects('b', '', s3()).get('k'), StoreUnavailable, 3],
      ['pages', () => s3Published(s3(), 'b', 'p').head('k'), StoreUnavailable, 3],
      [
        'the key',
        () => kmsSigner('arn:key', new KMSClient({ ...at, ...waits(quick) })).publicKeys(),
        StoreUnavailable,
        3,
      ],
      [
        'orders',
        () => invokeLater('f', {}, new LambdaClient({ ...at, ...waits(quick) })),
        StoreUnavailable,
        3,
      ],
      // One try: a second could be a second letter. The outbox says when to try again.
      [
        'mail',
        () => sesSender('a@example.com', new SESv2Client({ ...at, ...once })).send(mail, 'k'),
        NotSent,
        1,
      ],
      ['texts', () => snsTexts('arn:t', new SNSClient({ ...at, ...once })).send(text, 'k'), NotSent, 1],
      [
        'the account',
        () =>
          awsSendingAccount(
            new SESv2Client({ ...at, ...waits(quick) }),
            new SNSClient({ ...at, ...waits(quick) }),
          ).mailIsOpen(),
        Error,
        3,
      ],
    ];
    for (const [what, ask, kind, tries] of asks) {
      asked = 0;
      const failure = await ask().then(
        () => 'answered',
        (error: unknown) => error,
      );
      expect([what, failure]).toEqual([what, expect.any(kind)]);
      expect([what, asked]).toEqual([what, tries]);
    }
  }, 60_000);
});

import { SendEmailCommand, SESv2Client, TooManyRequestsException } from '@aws-sdk/client-sesv2';
import { mockClient } from 'aws-sdk-client-mock';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import { openSender } from '../../functions/stores/mail/openSender.ts';
import { sesSender } from '../../functions/stores/mail/sesSender.ts';

const mail = { to: 'clerk@example.com', subject: 'Vence hoy: 1 – “año”', text: 'Line one\nLine two\n' };

describe('the account’s mail service', () => {
  it('is asked to send plain text to one person, from the one address', async () => {
    const mock = mockClient(SESv2Client);
    mock.on(SendEmailCommand).resolves({ MessageId: 'm-1' });
    const sender = sesSender('claims@example.com', new SESv2Client({ region: 'us-east-1' }));
    expect(await sender.send(mail, '2026-04-22-c-1')).toBe('m-1');
    // SES API v2 reference, SendEmail: FromEmailAddress, Destination.ToAddresses, Content.Simple.
    expect(mock.commandCalls(SendEmailCommand).map(({ args }) => args[0].input)).toEqual([
      {
        FromEmailAddress: 'claims@example.com',
        Destination: { ToAddresses: ['clerk@example.com'] },
        Content: {
          Simple: {
            Subject: { Data: mail.subject, Charset: 'UTF-8' },
            Body: { Text: { Data: mail.text, Charset: 'UTF-8' } },
          },
        },
      },
    ]);
  });

  it.each([
    [
      new TooManyRequestsException({ message: 'slow down clerk@example.com', $metadata: {} }),
      'TooManyRequestsException',
    ],
    [new Error('connect ECONNREFUSED'), 'mail-service-away'],
  ])('that will not is said as a code, without its words', async (fault, code) => {
    const mock = mockClient(SESv2Client);
    mock.on(SendEmailCommand).rejects(fault);
    const sending = sesSender('claims@example.com', new SESv2Client({ region: 'us-east-1' })).send(mail, 'k');
    const error = await sending.then(
      () => null,
      (thrown: unknown) => thrown,
    );
    expect(error).toBeInstanceOf(NotSent);
    expect([(error as NotSent).code, (error as NotSent).message]).toEqual([code, code]);
  });
});

describe('letters as files', () => {
  it('are whole, and the same letter twice is one file', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'letters-'));
    try {
      const sender = await openSender(pathToFileURL(join(folder, 'mail')).href, 'claims@example.com');
      await sender.send(mail, '2026-04-22-c/../1');
      await sender.send(mail, '2026-04-22-c/../1');
      const files = await readdir(join(folder, 'mail'));
      expect(files).toEqual(['2026-04-22-c_.._1.txt']);
      expect(await readFile(join(folder, 'mail', files[0]!), 'utf8')).toBe(
        'From: claims@example.com\nTo: clerk@example.com\nSubject: Vence hoy: 1 – “año”\n\nLine one\nLine two\n',
      );
    } finally {
      await rm(folder, { recursive: true, force: true });
    }
  });
});

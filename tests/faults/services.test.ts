import {
  PutObjectCommand,
  GetObjectCommand,
  HeadObjectCommand,
  ListObjectsV2Command,
  S3Client,
  S3ServiceException,
} from '@aws-sdk/client-s3';
import { LambdaClient, InvokeCommand } from '@aws-sdk/client-lambda';
import {
  AccountSuspendedException,
  LimitExceededException,
  MailFromDomainNotVerifiedException,
  MessageRejected,
  SendEmailCommand,
  SendingPausedException,
  SESv2Client,
  TooManyRequestsException,
} from '@aws-sdk/client-sesv2';
import {
  AuthorizationErrorException,
  EndpointDisabledException,
  KMSDisabledException,
  PublishCommand,
  SNSClient,
  ThrottledException,
} from '@aws-sdk/client-sns';
import { mockClient } from 'aws-sdk-client-mock';
import { describe, expect, it } from 'vitest';
import { runDispatch } from '../../functions/dispatchSend/run.ts';
import { checkOutgoing } from '../../functions/outgoing/check.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { StoreUnavailable } from '../../functions/stores/faults.ts';
import { invokeLater } from '../../functions/stores/jobs/invokeLater.ts';
import { sesSender } from '../../functions/stores/mail/sesSender.ts';
import { s3Objects } from '../../functions/stores/objects/s3.ts';
import { s3Published } from '../../functions/stores/published/s3Published.ts';
import { snsTexts } from '../../functions/stores/texts/snsTexts.ts';
import { dispatchPatience } from '../../shared/dispatch/notice.ts';
import { watchedEvents } from '../../shared/deployment/watchedEvents.ts';
import { addresses, dispatchWorld, recipients, streamRecord } from '../support/dispatchWorld.ts';
import { at, fact, onStrike } from '../support/submissions.ts';

/** What the services beside the tables do that no server here does on demand. */
const metadata = { $metadata: { httpStatusCode: 400 }, message: `to ${addresses.join(' ')}` };
const named = (name: string, more: object = {}): Error => Object.assign(new Error(name), { name, ...more });
const thrownBy = (asking: Promise<unknown>): Promise<unknown> =>
  asking.then(
    () => 'answered',
    (error: unknown) => error,
  );

describe('S3', () => {
  const away: readonly [string, Error][] = [
    ['asks to slow down', named('SlowDown', { $metadata: { httpStatusCode: 503 } })],
    ['is busy', named('ServiceUnavailable', { $metadata: { httpStatusCode: 503 } })],
    ['fails', named('InternalError', { $metadata: { httpStatusCode: 500 } })],
    ['waited too long for the body', named('RequestTimeout', { $metadata: { httpStatusCode: 400 } })],
    ['has too many requests', named('TooManyRequests', { $metadata: { httpStatusCode: 429 } })],
    ['is silent', named('TimeoutError')],
    ['resets the connection', named('Error', { code: 'ECONNRESET' })],
    ['is at no address', new AggregateError([named('Error', { code: 'ECONNREFUSED' })])],
  ];
  const put = { contentType: 'text/plain', ifAbsent: true };
  const page = {
    bytes: new Uint8Array(),
    contentType: 'text/html',
    cacheControl: 'no-store',
    checkedAt: null,
  };

  it.each(away)('%s: unavailable, whatever was asked, and never "not there"', async (_, fault) => {
    const mock = mockClient(S3Client);
    mock.onAnyCommand().rejects(fault);
    const client = new S3Client({ region: 'us-east-1' });
    const objects = s3Objects('bucket', '', client);
    const published = s3Published(client, 'bucket', 'pages');
    for (const asking of [
      objects.put('a', new Uint8Array(), put),
      objects.get('a'),
      objects.head('a'),
      objects.list(''),
      objects.delete('a'),
      published.get('a'),
      published.head('a'),
      published.put('a', page, null),
    ])
      expect(await thrownBy(asking)).toBeInstanceOf(StoreUnavailable);
  });

  it('says that the condition failed: somebody else, or our own first try, was there', async () => {
    const mock = mockClient(S3Client);
    for (const status of [412, 409]) {
      mock.on(PutObjectCommand).rejects(
        new S3ServiceException({
          name: status === 412 ? 'PreconditionFailed' : 'ConditionalRequestConflict',
          $fault: 'client',
          $metadata: { httpStatusCode: status },
        }),
      );
      const client = new S3Client({ region: 'us-east-1' });
      expect(await s3Published(client, 'bucket', 'pages').put('a', page, '"seen"')).toBeNull();
      const written = thrownBy(s3Objects('bucket', '', client).put('a', new Uint8Array(), put));
      // 409: another write of the same key is under way, so it is asked again, and not for ever.
      if (status === 412) expect(await written).toBe('answered');
      else expect(await written).toBeInstanceOf(StoreUnavailable);
    }
  });

  it('refuses what we may not: a fault of ours, and not a missing object', async () => {
    const mock = mockClient(S3Client);
    const refused = named('AccessDenied', { $metadata: { httpStatusCode: 403 } });
    for (const command of [PutObjectCommand, GetObjectCommand, HeadObjectCommand, ListObjectsV2Command])
      mock.on(command as never).rejects(refused);
    const objects = s3Objects('bucket', '', new S3Client({ region: 'us-east-1' }));
    for (const asking of [
      objects.put('a', new Uint8Array(), put),
      objects.get('a'),
      objects.head('a'),
      objects.list(''),
    ])
      expect(await thrownBy(asking)).toBe(refused);
  });
});

describe('a message to dispatch that a service refuses', () => {
  const mails: readonly [string, Error][] = [
    ['address refused, or still in the sandbox', new MessageRejected(metadata)],
    ['throttled', new TooManyRequestsException(metadata)],
    ['over the daily quota', new LimitExceededException(metadata)],
    ['account suspended', new AccountSuspendedException(metadata)],
    ['sending paused', new SendingPausedException(metadata)],
    ['sender not confirmed', new MailFromDomainNotVerifiedException(metadata)],
    ['cut off', named('Error', { code: 'ECONNRESET' })],
  ];
  const texts: readonly [string, Error][] = [
    ['throttled', new ThrottledException(metadata)],
    ['no right', new AuthorizationErrorException(metadata)],
    ['telephone opted out', new EndpointDisabledException(metadata)],
    ['topic’s key disabled', new KMSDisabledException(metadata)],
    ['silent', named('TimeoutError')],
  ];

  /** Everything is refused for so many minutes; then what the check of every five minutes says. */
  async function refusedBy(mail: Error | null, text: Error | null, minutes: number) {
    const ses = mockClient(SESv2Client);
    const sns = mockClient(SNSClient);
    if (mail) ses.on(SendEmailCommand).rejects(mail);
    else ses.on(SendEmailCommand).resolves({ MessageId: 'mail' });
    if (text) sns.on(PublishCommand).rejects(text);
    else sns.on(PublishCommand).resolves({ MessageId: 'text' });
    let ms = Date.parse(at(10));
    const now = () => new Date(ms);
    const world = dispatchWorld({ now });
    const deps = {
      ...world.deps,
      email: sesSender('a@example.com', new SESv2Client({ region: 'us-east-1', maxAttempts: 1 })),
      texts: snsTexts('arn:topic', new SNSClient({ region: 'us-east-1', maxAttempts: 1 })),
    };
    await world.accept(fact('strike', 9, onStrike(9), { hydrantId: 'H-1', dispatch: null }));
    await runDispatch(deps, world.take().map(streamRecord));
    for (let minute = 0; minute < minutes; minute += 1) {
      ms += 60_000;
      await runDispatch(deps, []);
    }
    const lines: LogEntry[] = [];
    const { lateMessages } = await checkOutgoing({
      ...world.stores,
      settings: world.settings,
      account: {
        mailIsOpen: async () => true,
        isConfirmed: async () => true,
        textsAreOpen: async () => true,
      },
      now,
      log: (entry) => void lines.push(entry),
    });
    return {
      lateMessages,
      lines,
      world,
      sent: {
        mails: ses.commandCalls(SendEmailCommand).length,
        texts: sns.commandCalls(PublishCommand).length,
      },
    };
  }
  const ways = (by: 'email' | 'text'): number => recipients.filter((one) => one.by === by).length;

  it.each(mails)(
    'as mail (%s): tried a bounded number of times, and its alarm’s number counts it',
    async (_, fault) => {
      const { lateMessages, lines, sent, world } = await refusedBy(fault, null, 90);
      expect(sent.mails).toBe(dispatchPatience.mostTries * ways('email'));
      // The telephones have theirs, once.
      expect(sent.texts).toBe(ways('text'));
      expect(lateMessages).toBe(ways('email'));
      expect(lines).toMatchObject([{ event: watchedEvents.lateMessages.event, lateMessages: ways('email') }]);
      for (const address of addresses) expect(JSON.stringify([lines, world.logged])).not.toContain(address);
    },
  );

  it.each(texts)('as a text (%s): likewise, and the mail is there', async (_, fault) => {
    const { lateMessages, sent } = await refusedBy(null, fault, 90);
    expect(sent).toEqual({ mails: ways('email'), texts: dispatchPatience.mostTries * ways('text') });
    expect(lateMessages).toBe(ways('text'));
  });

  it('is counted ten minutes after it was written, long before it is given up', async () => {
    expect((await refusedBy(new TooManyRequestsException(metadata), null, 9)).lateMessages).toBe(0);
    expect((await refusedBy(new TooManyRequestsException(metadata), null, 10)).lateMessages).toBe(
      ways('email'),
    );
  });
});

it.each([
  ['throttled', named('TooManyRequestsException', { $metadata: { httpStatusCode: 429 } })],
  ['at its limit of functions', named('ServiceException', { $metadata: { httpStatusCode: 500 } })],
  ['cut off', named('Error', { code: 'ECONNRESET' })],
])('an order for a packet that Lambda does not take (%s) is answered "try again"', async (_, fault) => {
  mockClient(LambdaClient).on(InvokeCommand).rejects(fault);
  const asking = invokeLater('builder', {}, new LambdaClient({ region: 'us-east-1' }));
  expect(await thrownBy(asking)).toBeInstanceOf(StoreUnavailable);
});

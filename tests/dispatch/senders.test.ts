import { PublishCommand, SNSClient, ThrottledException } from '@aws-sdk/client-sns';
import { mockClient } from 'aws-sdk-client-mock';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import { NotSent } from '../../functions/stores/mail/mailSender.ts';
import { openTexts } from '../../functions/stores/texts/openTexts.ts';
import { snsTexts } from '../../functions/stores/texts/snsTexts.ts';

const message = { recipientId: 'duty-officer', phone: '+12025550111', text: 'HYDRANT OUT OF SERVICE' };
const topic = 'arn:aws:sns:us-east-1:123456789012:texts';
const client = () => new SNSClient({ region: 'us-east-1', maxAttempts: 1 });

describe('the account’s text service', () => {
  it('is asked to publish to the one topic, for one recipient, and is told no number', async () => {
    const mock = mockClient(SNSClient);
    mock.on(PublishCommand).resolves({ MessageId: 'm-1' });
    expect(await snsTexts(topic, client()).send(message, 'key')).toBe('m-1');
    // SNS API reference, Publish: TopicArn, Message, MessageAttributes; reserved attribute AWS.SNS.SMS.SMSType.
    expect(mock.commandCalls(PublishCommand).map(({ args }) => args[0].input)).toEqual([
      {
        TopicArn: topic,
        Message: 'HYDRANT OUT OF SERVICE',
        MessageAttributes: {
          recipient: { DataType: 'String', StringValue: 'duty-officer' },
          'AWS.SNS.SMS.SMSType': { DataType: 'String', StringValue: 'Transactional' },
        },
      },
    ]);
  });

  it.each([
    [new ThrottledException({ message: 'slow down +12025550111', $metadata: {} }), 'ThrottledException'],
    [Object.assign(new Error('socket hang up'), { name: 'TimeoutError' }), 'text-service-away'],
  ])('that will not is asked once, and its reason is a code', async (fault, code) => {
    const mock = mockClient(SNSClient);
    mock.on(PublishCommand).rejects(fault);
    const error = await snsTexts(topic, client())
      .send(message, 'key')
      .then(
        () => null,
        (thrown: unknown) => thrown,
      );
    expect(error).toBeInstanceOf(NotSent);
    expect([(error as NotSent).code, (error as NotSent).message]).toEqual([code, code]);
    expect(mock.commandCalls(PublishCommand)).toHaveLength(1);
  });
});

it('texts as files are whole, and the same text twice is one file', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'texts-'));
  try {
    const sender = await openTexts(pathToFileURL(join(folder, 'mail')).href);
    await sender.send(message, 'dispatch-HK 4728-1-out-duty-officer');
    await sender.send(message, 'dispatch-HK 4728-1-out-duty-officer');
    expect(await readdir(join(folder, 'mail'))).toEqual(['dispatch-HK_4728-1-out-duty-officer.txt']);
    expect(await readFile(join(folder, 'mail', 'dispatch-HK_4728-1-out-duty-officer.txt'), 'utf8')).toBe(
      'To: +12025550111\n\nHYDRANT OUT OF SERVICE\n',
    );
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});

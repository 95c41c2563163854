import { PublishCommand, SNSClient, SNSServiceException } from '@aws-sdk/client-sns';
import { recipientAttribute } from '../../../shared/deployment/texts.ts';
import { NotSent } from '../mail/mailSender.ts';
import type { TextSender } from './textSender.ts';
import { waits } from '../patience.ts';

/**
 * Text messages through one topic, whose subscriptions hold the numbers: the function may publish to that topic and to
 * no telephone of its own choice. One attempt, as with letters: where only the answer was lost, a second is a second
 * message, and the outbox says when to try again.
 */
export function snsTexts(
  topicArn: string,
  client: SNSClient = new SNSClient(waits({ maxAttempts: 1 })),
): TextSender {
  const said = (value: string) => ({ DataType: 'String', StringValue: value });
  return {
    async send({ recipientId, text }) {
      try {
        const { MessageId } = await client.send(
          new PublishCommand({
            TopicArn: topicArn,
            Message: text,
            MessageAttributes: {
              [recipientAttribute]: said(recipientId),
              // Delivered first and dearest; the other kind is advertising.
              'AWS.SNS.SMS.SMSType': said('Transactional'),
            },
          }),
        );
        return MessageId ?? null;
      } catch (error) {
        throw new NotSent(error instanceof SNSServiceException ? error.name : 'text-service-away', {
          cause: error,
        });
      }
    },
  };
}

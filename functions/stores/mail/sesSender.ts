import { SendEmailCommand, SESv2Client, SESv2ServiceException } from '@aws-sdk/client-sesv2';
import { NotSent, type MailSender } from './mailSender.ts';
import { waits } from '../patience.ts';

/**
 * Letters by the account's mail service. Plain text, one recipient, from the one address that the function may use. One
 * attempt: where only the answer was lost, a second would be a second letter; the outbox says when to try again.
 */
export function sesSender(
  from: string,
  client: SESv2Client = new SESv2Client(waits({ maxAttempts: 1 })),
): MailSender {
  return {
    async send({ to, subject, text }) {
      try {
        const { MessageId } = await client.send(
          new SendEmailCommand({
            FromEmailAddress: from,
            Destination: { ToAddresses: [to] },
            Content: {
              Simple: {
                Subject: { Data: subject, Charset: 'UTF-8' },
                Body: { Text: { Data: text, Charset: 'UTF-8' } },
              },
            },
          }),
        );
        return MessageId ?? null;
      } catch (error) {
        throw new NotSent(error instanceof SESv2ServiceException ? error.name : 'mail-service-away', {
          cause: error,
        });
      }
    },
  };
}

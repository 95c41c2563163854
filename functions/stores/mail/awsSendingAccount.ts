import {
  GetAccountCommand,
  GetEmailIdentityCommand,
  NotFoundException,
  SESv2Client,
} from '@aws-sdk/client-sesv2';
import { GetSMSSandboxAccountStatusCommand, SNSClient } from '@aws-sdk/client-sns';
import type { SendingAccount } from './sendingAccount.ts';
import { waits } from '../patience.ts';

/** The mail and text services of the account that this runs in. */
export function awsSendingAccount(
  mail: SESv2Client = new SESv2Client(waits()),
  texts: SNSClient = new SNSClient(waits()),
): SendingAccount {
  return {
    async mailIsOpen() {
      const { ProductionAccessEnabled, SendingEnabled } = await mail.send(new GetAccountCommand());
      return ProductionAccessEnabled === true && SendingEnabled === true;
    },
    async isConfirmed(address) {
      try {
        const answer = await mail.send(new GetEmailIdentityCommand({ EmailIdentity: address }));
        return answer.VerifiedForSendingStatus === true;
      } catch (error) {
        if (error instanceof NotFoundException) return false;
        throw error;
      }
    },
    async textsAreOpen() {
      const { IsInSandbox } = await texts.send(new GetSMSSandboxAccountStatusCommand());
      return IsInSandbox === false;
    },
  };
}

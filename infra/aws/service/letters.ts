import { Duration, Stack, TimeZone } from 'aws-cdk-lib';
import { EmailIdentity, Identity } from 'aws-cdk-lib/aws-ses';
import type { IFunction } from 'aws-cdk-lib/aws-lambda';
import { Schedule, ScheduleExpression } from 'aws-cdk-lib/aws-scheduler';
import { LambdaInvoke } from 'aws-cdk-lib/aws-scheduler-targets';
import { Construct } from 'constructs';
import type { UtilitySettings } from '../../../shared/utility/settings.ts';

/** The sender of the daily letters and the clock that wakes it. Without the setting there is neither. */
export class Letters extends Construct {
  /** The one identity that letters may come from. */
  readonly senderArn: string;
  private readonly utility: UtilitySettings;

  constructor(scope: Construct, id: string, utility: UtilitySettings) {
    super(scope, id);
    this.utility = utility;
    const { digest } = utility;
    // The service mails a link to this address; until somebody follows it, nothing is sent.
    if (digest) new EmailIdentity(this, 'Sender', { identity: Identity.email(digest.from) });
    // An address of no mail system (RFC 2606) where no letter is sent: the right is then a right to nothing.
    this.senderArn = Stack.of(this).formatArn({
      service: 'ses',
      resource: 'identity',
      resourceName: digest?.from ?? 'nobody@unset.invalid',
    });
  }

  /**
   * Each hour from the hour of the settings to the day's end, by the utility's clock: the first writes and sends, the
   * others try what has not gone yet.
   */
  sendDaily(fn: IFunction): void {
    const { digest, timeZone } = this.utility;
    if (!digest) return;
    new Schedule(this, 'Daily', {
      description: 'Writes and sends the daily letters of what is due; later hours try again what failed.',
      schedule: ScheduleExpression.cron({
        minute: '0',
        hour: `${digest.hour}-23`,
        timeZone: TimeZone.of(timeZone),
      }),
      target: new LambdaInvoke(fn, { retryAttempts: 1, maxEventAge: Duration.minutes(30) }),
    });
  }
}

import { CfnOutput, type Stack } from 'aws-cdk-lib';
import type { DataStack } from '../data/dataStack.ts';
import type { DeploymentSettings } from '../settings.ts';
import type { BrowserClient } from './browserClient.ts';
import type { Pages } from './pages.ts';

export interface NextProps {
  readonly siteUrl: string;
  readonly browser: BrowserClient;
  readonly data: DataStack;
  readonly pages: Pages;
  readonly settings: DeploymentSettings;
}

/** The stack's outputs: addresses, and in order what the operator does now. */
export function sayWhatNext(stack: Stack, { siteUrl, browser, data, pages, settings }: NextProps): void {
  const { domain, firstManager, operators, utility } = settings;
  const say = (id: string, value: string, description: string): CfnOutput =>
    new CfnOutput(stack, id, { value, description });
  say('siteAddress', siteUrl, 'The public page; the desk is at /desk/, crews go to /crew/');
  say('signInPage', data.people.domain.baseUrl(), 'Where people sign in');
  say('signInClientId', browser.client.userPoolClientId, 'TOKEN_AUDIENCE of the API');

  const next: string[] = [
    ...(domain && !domain.hostedZone
      ? [`Enter ${domain.name} as a CNAME for ${pages.distribution.distributionDomainName}`]
      : []),
    ...(utility.publicUrl === null
      ? [`Put ${siteUrl}/ into utility.publicUrl of the settings and deploy again`]
      : []),
    `Confirm the subscription that was mailed to ${operators.emails.join(', ')}: until then no alarm reaches anybody`,
    firstManager
      ? `${firstManager.email} signs in with the password that was mailed, and adds the others (docs/operations/people.md)`
      : 'Add a manager (docs/operations/people.md)',
    ...(utility.digest || utility.dispatchMessages?.on
      ? [
          'Follow the links mailed to the senders’ addresses and ask to leave the sending sandboxes (docs/operations/first-hour.md); the alarm CannotSend rings until then',
        ]
      : []),
    'Load the inventory (docs/operations/inventory.md): until then the public page says that it is not set up',
    `npm run smoke -- ${siteUrl}`,
  ];
  next.forEach((value, index) => {
    say(`next${index + 1}`, value, `What to do now, ${index + 1} of ${next.length}`);
  });
}

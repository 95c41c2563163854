import { Duration } from 'aws-cdk-lib';
import { CfnManagedLoginBranding, OAuthScope, UserPoolClient } from 'aws-cdk-lib/aws-cognito';
import { Construct } from 'constructs';
import { commandsReturnTo } from '../../../shared/deployment/signIn.ts';
import type { People } from '../data/people.ts';
import type { DeploymentSettings } from '../settings.ts';

/**
 * The browser's way in: authorization code with PKCE and no secret. The API takes the ID token, because that is the
 * one that carries the person's name and is meant for this client alone.
 */
export class BrowserClient extends Construct {
  readonly client: UserPoolClient;

  constructor(scope: Construct, id: string, people: People, siteUrl: string, { signIn }: DeploymentSettings) {
    super(scope, id);
    this.client = new UserPoolClient(this, 'Client', {
      userPool: people.pool,
      generateSecret: false,
      preventUserExistenceErrors: true,
      enableTokenRevocation: true,
      idTokenValidity: Duration.hours(1),
      accessTokenValidity: Duration.hours(1),
      refreshTokenValidity: Duration.hours(signIn.rememberHours),
      // Passkeys come with the choice of how to sign in (ALLOW_USER_AUTH); no password passes through our own pages.
      authFlows: { user: true, userSrp: true },
      oAuth: {
        flows: { authorizationCodeGrant: true },
        scopes: [OAuthScope.OPENID, OAuthScope.PROFILE, OAuthScope.EMAIL],
        // And the machine of somebody who runs a command against this deployment.
        callbackUrls: [`${siteUrl}/sign-in/`, commandsReturnTo],
        logoutUrls: [`${siteUrl}/`],
      },
    });
    // Without a look of its own the managed sign-in page answers that it is unavailable.
    new CfnManagedLoginBranding(this, 'Look', {
      userPoolId: people.pool.userPoolId,
      clientId: this.client.userPoolClientId,
      useCognitoProvidedValues: true,
    });
  }
}

import { RemovalPolicy } from 'aws-cdk-lib';
import {
  AccountRecovery,
  CfnUserPoolGroup,
  FeaturePlan,
  ManagedLoginVersion,
  Mfa,
  UserPool,
  type UserPoolDomain,
} from 'aws-cdk-lib/aws-cognito';
import { Construct } from 'constructs';
import { roles } from '../../../shared/roles.ts';
import type { DeploymentSettings } from '../settings.ts';

/** Who may sign in, in the groups that handlers know as roles. People are added by a manager, never by themselves. */
export class People extends Construct {
  readonly pool: UserPool;
  readonly domain: UserPoolDomain;

  constructor(scope: Construct, id: string, { signIn }: DeploymentSettings) {
    super(scope, id);
    this.pool = new UserPool(this, 'Pool', {
      selfSignUpEnabled: false,
      signInAliases: { email: true },
      signInCaseSensitive: false,
      standardAttributes: { fullname: { required: true, mutable: true } },
      mfa: Mfa.OPTIONAL,
      mfaSecondFactor: { otp: true, sms: false },
      passwordPolicy: { minLength: 12, requireDigits: false, requireSymbols: false, requireUppercase: false },
      accountRecovery: AccountRecovery.EMAIL_ONLY,
      featurePlan: FeaturePlan.ESSENTIALS,
      deletionProtection: true,
      removalPolicy: RemovalPolicy.RETAIN,
    });
    roles.forEach((role, precedence) => {
      new CfnUserPoolGroup(this, `Group-${role}`, {
        userPoolId: this.pool.userPoolId,
        groupName: role,
        precedence,
      });
    });
    this.domain = this.pool.addDomain('SignIn', {
      cognitoDomain: { domainPrefix: signIn.domainPrefix },
      managedLoginVersion: ManagedLoginVersion.NEWER_MANAGED_LOGIN,
    });
  }
}

import { RemovalPolicy } from 'aws-cdk-lib';
import {
  AccountRecovery,
  CfnUserPoolGroup,
  CfnUserPoolUser,
  CfnUserPoolUserToGroupAttachment,
  FeaturePlan,
  ManagedLoginVersion,
  Mfa,
  PasskeyUserVerification,
  UserPool,
  type UserPoolDomain,
} from 'aws-cdk-lib/aws-cognito';
import { Construct } from 'constructs';
import { roles, type Role } from '../../../shared/roles.ts';
import type { DeploymentSettings } from '../settings.ts';

/** Who may sign in, in the groups that handlers know as roles. People are added by a manager, never by themselves. */
export class People extends Construct {
  readonly pool: UserPool;
  readonly domain: UserPoolDomain;

  constructor(scope: Construct, id: string, { signIn, firstManager }: DeploymentSettings) {
    super(scope, id);
    this.pool = new UserPool(this, 'Pool', {
      selfSignUpEnabled: false,
      signInAliases: { email: true },
      signInCaseSensitive: false,
      standardAttributes: { fullname: { required: true, mutable: true } },
      mfa: signIn.secondFactor === 'required' ? Mfa.REQUIRED : Mfa.OPTIONAL,
      mfaSecondFactor: { otp: true, sms: false },
      // At 3 a.m. on a phone: a fingerprint. A password stays possible, for a borrowed phone. Where a second factor is
      // required the service offers no passkeys.
      ...(signIn.secondFactor === 'required'
        ? {}
        : {
            signInPolicy: { allowedFirstAuthFactors: { password: true, passkey: true } },
            passkeyUserVerification: PasskeyUserVerification.REQUIRED,
          }),
      // Length and no composition: NIST SP 800-63B, 5.1.1.2.
      passwordPolicy: { minLength: 12, requireDigits: false, requireSymbols: false, requireUppercase: false },
      accountRecovery: AccountRecovery.EMAIL_ONLY,
      featurePlan: FeaturePlan.ESSENTIALS,
      deletionProtection: true,
      removalPolicy: RemovalPolicy.RETAIN,
    });
    const groups = Object.fromEntries(
      roles.map((role, precedence) => [
        role,
        new CfnUserPoolGroup(this, `Group-${role}`, {
          userPoolId: this.pool.userPoolId,
          groupName: role,
          precedence,
        }),
      ]),
    ) as Record<Role, CfnUserPoolGroup>;
    if (firstManager) this.addFirst(firstManager, groups.manager);
    this.domain = this.pool.addDomain('SignIn', {
      cognitoDomain: { domainPrefix: signIn.domainPrefix },
      managedLoginVersion: ManagedLoginVersion.NEWER_MANAGED_LOGIN,
    });
  }

  /** Somebody has to let the others in. The service mails them a password for once; they stay when the setting goes. */
  private addFirst({ email, name }: { email: string; name: string }, managers: CfnUserPoolGroup): void {
    const user = new CfnUserPoolUser(this, 'FirstManager', {
      userPoolId: this.pool.userPoolId,
      username: email,
      desiredDeliveryMediums: ['EMAIL'],
      userAttributes: [
        { name: 'email', value: email },
        { name: 'email_verified', value: 'true' },
        { name: 'name', value: name },
      ],
    });
    const membership = new CfnUserPoolUserToGroupAttachment(this, 'FirstManagerIsManager', {
      userPoolId: this.pool.userPoolId,
      groupName: 'manager',
      username: email,
    });
    membership.addResourceDependency(user);
    membership.addResourceDependency(managers);
    for (const kept of [user, membership]) kept.applyRemovalPolicy(RemovalPolicy.RETAIN);
  }
}

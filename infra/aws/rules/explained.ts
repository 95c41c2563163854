export interface Explained {
  /** The rule, with the finding in brackets where the rule has several: matched whole. */
  readonly rule: RegExp;
  /** The construct, without the stack's name: matched whole. */
  readonly where: RegExp;
  readonly because: string;
}

/**
 * Where this deployment departs from the AwsSolutions rules, and why. A finding that no line explains fails the synth; a
 * line that explains nothing fails a test.
 */
export const explained: readonly Explained[] = [
  // People
  {
    rule: /AwsSolutions-COG1/,
    where: /People\/Pool\/Resource/,
    because:
      'Twelve characters and no rule of composition: NIST SP 800-63B (5.1.1.2) advises length, and against composition, which gives worse passwords.',
  },
  {
    rule: /AwsSolutions-COG2/,
    where: /People\/Pool\/Resource/,
    because:
      'A second factor is a setting (signIn.secondFactor). Passkeys, which a phone at night can use, are what the service offers only where it is not required of everyone.',
  },
  {
    rule: /AwsSolutions-COG8/,
    where: /People\/Pool\/Resource/,
    because:
      'The plus plan adds detection of stolen passwords by the address of the caller, which a crew on the road changes all night; passkeys and few, known people stand in for it.',
  },
  // What functions may do: infra/aws/permissions.ts lists it, tests/infra/aws/permissions.test.ts holds it.
  {
    rule: /AwsSolutions-IAM5\[Resource::(?!arn:).+\/(shown\/|pages\/)?\*\]/,
    where: /Function-\w+\/Role\/DefaultPolicy\/Resource/,
    because:
      'Objects are named by hash or edition, so a right on them is a right on a prefix: the one that infra/aws/permissions.ts lists.',
  },
  {
    rule: /AwsSolutions-IAM5\[Resource::\*\]/,
    where: /Function-(project|publish|dispatchSend)\/Role\/DefaultPolicy\/Resource/,
    because: 'dynamodb:ListStreams knows no resource; it gives the names of streams and nothing in them.',
  },
  {
    rule: /AwsSolutions-IAM5\[Resource::\*\]/,
    where: /Function-outgoing\/Role\/DefaultPolicy\/Resource/,
    because:
      'Whether the account is in a sending sandbox is a question about the account: ses:GetAccount and sns:GetSMSSandboxAccountStatus know no resource. Both only read.',
  },
  {
    rule: /AwsSolutions-IAM5\[Resource::<FunctiondigestHandler\w+\.Arn>:\*\]/,
    where: /SchedulerRoleForTarget-\w+\/DefaultPolicy\/Resource/,
    because: 'Versions of the one function that the schedule wakes; only to start it.',
  },
  {
    rule: /AwsSolutions-IAM5\[Resource::(arn:<AWS::Partition>:s3:::cdk-hnb659fds-assets-<AWS::AccountId>-<AWS::Region>|<PublishedBucket\.Arn>\/assets)\/\*\]/,
    where: /Pages\/AssetsRole\/DefaultPolicy\/Resource/,
    because:
      'The helper that brings the site’s files while a deployment runs: reads what the CLI uploaded, writes under assets/ and nowhere else.',
  },
  {
    rule: /AwsSolutions-L1/,
    where: /Custom::CDKBucketDeployment\w+\/Resource/,
    because: 'The CDK’s own helper, whose runtime comes with the version of the CDK in the lock file.',
  },
  // Pages and API
  {
    rule: /AwsSolutions-APIG4/,
    where: /Api\/Http\/GET--[\w{}-]+\/Resource/,
    because:
      'Public by the route table (shared/deployment/routes.ts, allowed: anyone): only GET, nothing is written, and tests/infra/aws/service.test.ts holds the list.',
  },
  {
    rule: /AwsSolutions-CFR1/,
    where: /Pages\/Distribution\/Resource/,
    because: 'Mutual aid, travelers and insurers read the page from anywhere.',
  },
  {
    rule: /AwsSolutions-CFR2/,
    where: /Pages\/Distribution\/Resource/,
    because:
      'Pages are static files; what costs money lies behind a sign-in, limits of rate at the gateway and limits on every body. A web firewall costs more than all the rest of a town’s deployment; docs/threat-model.md says when to add one.',
  },
  {
    rule: /AwsSolutions-CFR3/,
    where: /Pages\/Distribution\/Resource/,
    because:
      'Such a log holds who looked at which hydrant and from where: personal data that nobody here has a use for.',
  },
  {
    rule: /AwsSolutions-CFR4/,
    where: /Pages\/Distribution\/Resource/,
    because:
      'Only under CloudFront’s own name, whose certificate brings its own list of protocols. With the setting "domain" it is TLS 1.2 (2021) or better.',
  },
  {
    rule: /AwsSolutions-S1/,
    where: /Pages\/PublishedBucket\/Resource/,
    because:
      'Public pages, read by CloudFront alone and written by one function whose log says what it wrote.',
  },
  {
    rule: /AwsSolutions-SQS3/,
    where: /(Project|Publish|Dispatch|Display)Failures\/Resource/,
    because: 'These queues are where failures end, and each has an alarm.',
  },
];

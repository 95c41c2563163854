import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Template } from 'aws-cdk-lib/assertions';
import { describe, expect, it } from 'vitest';
import type { DeploymentSettings } from '../../../infra/aws/settings.ts';
import { example, resourcesOf, synthesise } from './synthesised.ts';

type Synthesised = ReturnType<typeof synthesise>;
const { service } = synthesise();

describe('two stages in one account', () => {
  const domain = {
    name: 'hydrants.millrace.example',
    certificateArn: 'arn:aws:acm:us-east-1:123456789012:certificate/00000000-0000-0000-0000-000000000000',
    hostedZone: { id: 'Z0000000000', name: 'millrace.example' },
  };
  const withDomain = (settings: DeploymentSettings, name = domain.name): DeploymentSettings => ({
    ...settings,
    domain: { ...domain, name },
    utility: { ...settings.utility, publicUrl: `https://${name}/` },
  });
  const prod = synthesise(withDomain(example()));
  const settingsOf = (stage: string): DeploymentSettings => ({ ...example(), stage });
  const other = synthesise(settingsOf('trial'));

  /** Names that the account, the region or the world has but once. What has none gets one from CloudFormation. */
  const once: Readonly<Record<string, readonly string[]>> = {
    'AWS::Budgets::Budget': ['Budget.BudgetName'],
    'AWS::CloudFront::CachePolicy': ['CachePolicyConfig.Name'],
    'AWS::CloudFront::Distribution': ['DistributionConfig.Aliases'],
    'AWS::CloudFront::Function': ['Name'],
    'AWS::CloudFront::OriginAccessControl': ['OriginAccessControlConfig.Name'],
    'AWS::CloudFront::ResponseHeadersPolicy': ['ResponseHeadersPolicyConfig.Name'],
    'AWS::CloudWatch::Alarm': ['AlarmName'],
    'AWS::CloudWatch::Dashboard': ['DashboardName'],
    'AWS::Cognito::UserPoolDomain': ['Domain'],
    'AWS::DynamoDB::Table': ['TableName'],
    'AWS::Events::Rule': ['Name'],
    'AWS::IAM::ManagedPolicy': ['ManagedPolicyName'],
    'AWS::IAM::Role': ['RoleName'],
    'AWS::KMS::Alias': ['AliasName'],
    'AWS::Lambda::Function': ['FunctionName'],
    'AWS::Logs::LogGroup': ['LogGroupName'],
    'AWS::Route53::RecordSet': ['Name'],
    'AWS::S3::Bucket': ['BucketName'],
    'AWS::SES::EmailIdentity': ['EmailIdentity'],
    'AWS::SNS::Topic': ['TopicName'],
    'AWS::SQS::Queue': ['QueueName'],
    'AWS::Scheduler::Schedule': ['Name'],
  };
  const at = (properties: Record<string, any>, path: string): unknown =>
    path.split('.').reduce<any>((inner, key) => inner?.[key], properties);
  const namesOf = ({ data, service: own }: Synthesised): ReadonlySet<string> =>
    new Set(
      [data, own].flatMap((template) =>
        Object.values(resourcesOf(template)).flatMap(({ Type, Properties = {} }) =>
          (once[Type] ?? []).flatMap((path) => {
            const name = at(Properties, path);
            return name === undefined ? [] : [`${Type} ${JSON.stringify(name)}`];
          }),
        ),
      ),
    );
  const shared = (a: Synthesised, b: Synthesised): string[] => {
    const theirs = namesOf(b);
    return [...namesOf(a)].filter((name) => theirs.has(name)).sort();
  };

  it('that differ in nothing but the stage share what the handbook says to change, and no more', () => {
    const { digest, dispatchMessages } = example().utility;
    expect(shared(prod, synthesise(withDomain(settingsOf('trial'))))).toEqual([
      `AWS::CloudFront::Distribution ["${domain.name}"]`,
      `AWS::Cognito::UserPoolDomain "${example().signIn.domainPrefix}"`,
      `AWS::Route53::RecordSet "${domain.name}."`,
      `AWS::SES::EmailIdentity "${digest!.from}"`,
      `AWS::SES::EmailIdentity "${dispatchMessages!.from}"`,
    ]);
    const handbook = readFileSync(join(import.meta.dirname, '../../../docs/operations/deploy.md'), 'utf8');
    const [, paragraph = ''] = /\*\*Two stages in one account\*\*([^]*?)\n\n/.exec(handbook) ?? [];
    for (const field of [
      'stage',
      'signIn.domainPrefix',
      'domain',
      'utility.digest',
      'utility.dispatchMessages',
    ])
      expect(paragraph).toContain(`\`${field}\``);
  });

  it('share no name once that is done', () => {
    const trial = settingsOf('trial');
    const { digest, dispatchMessages, ...utility } = trial.utility;
    const quiet = synthesise({
      ...trial,
      utility,
      signIn: { ...trial.signIn, domainPrefix: 'millrace-trial' },
    });
    expect(shared(prod, quiet)).toEqual([]);
    const telling = synthesise(
      withDomain(
        {
          ...trial,
          signIn: { ...trial.signIn, domainPrefix: 'millrace-trial' },
          utility: {
            ...utility,
            digest: { ...digest!, from: 'trial-claims@water.millrace.example' },
            dispatchMessages: { ...dispatchMessages!, from: 'trial@water.millrace.example' },
          },
        },
        'trial.millrace.example',
      ),
    );
    expect(shared(prod, telling)).toEqual([]);
  });

  it('are told apart by their tags', () => {
    const tagsOf = (from: Template, id: string): Record<string, string> =>
      Object.fromEntries(
        (resourcesOf(from)[id]!.Properties['Tags'] as { Key: string; Value: string }[]).map(
          ({ Key, Value }) => [Key, Value],
        ),
      );
    for (const [stage, { data }] of [
      ['prod', prod],
      ['trial', other],
    ] as const)
      expect(tagsOf(data, 'SubmissionsTable')).toEqual({
        application: 'hydrant-strike-ledger',
        stage,
        utility: example().utility.name,
      });
  });

  it('count what they log apart', () => {
    const [metric] = Object.values(resourcesOf(other.service)).filter(
      ({ Type }) => Type === 'AWS::Logs::MetricFilter',
    );
    expect(metric!.Properties['MetricTransformations'][0].MetricNamespace).toBe('Hydrants-trial-Service');
  });
});

describe('what the operator is told', () => {
  const said = (from: typeof service) =>
    Object.entries(from.toJSON()['Outputs'] as Record<string, { Description?: string; Value: unknown }>)
      .filter(([id]) => id.startsWith('next'))
      .map(([id, { Value }]) => `${id} ${JSON.stringify(Value)}`);

  it('is what to do now, in order, ending with a look whether all is well', () => {
    const next = said(service);
    expect(next.map((line) => line.split(' ')[0])).toEqual(next.map((_, index) => `next${index + 1}`));
    expect(next[0]).toContain('publicUrl');
    expect(next[1]).toContain(example().operators.emails[0]);
    expect(next[2]).toContain(example().firstManager!.email);
    expect(next[3]).toContain('CannotSend');
    expect(next.at(-1)).toContain('npm run smoke');
  });

  it('leaves out what is done', () => {
    const settings = example();
    const { digest: _, dispatchMessages: __, ...utility } = settings.utility;
    const done = synthesise({
      ...settings,
      firstManager: null,
      utility: { ...utility, publicUrl: 'https://hydrants.millrace.example/' },
    });
    const next = said(done.service).join('\n');
    expect(next).not.toContain('publicUrl');
    expect(next).not.toContain('CannotSend');
    expect(next).toContain('Add a manager');
  });
});

describe('a name of its own', () => {
  const settings = example();
  const name = 'hydrants.millrace.example';
  const domain = {
    name,
    certificateArn: 'arn:aws:acm:us-east-1:123456789012:certificate/00000000-0000-0000-0000-000000000000',
    hostedZone: { id: 'Z0000000000', name: 'millrace.example' },
  };
  const utility = { ...settings.utility, publicUrl: `https://${name}/` };
  const own = resourcesOf(synthesise({ ...settings, utility, domain }).service);
  const ownOf = (type: string) =>
    Object.values(own).flatMap(({ Type, Properties }) => (Type === type ? [Properties] : []));

  it('is the distribution’s, with its certificate and TLS 1.2 or better, and is entered in its zone', () => {
    const [{ DistributionConfig: config }] = ownOf('AWS::CloudFront::Distribution') as [any];
    expect(config.Aliases).toEqual([name]);
    expect(config.ViewerCertificate).toEqual({
      AcmCertificateArn: domain.certificateArn,
      MinimumProtocolVersion: 'TLSv1.2_2021',
      SslSupportMethod: 'sni-only',
    });
    expect(
      ownOf('AWS::Route53::RecordSet')
        .map(({ Name, Type, HostedZoneId }) => `${Name} ${Type} ${HostedZoneId}`)
        .sort(),
    ).toEqual([`${name}. A Z0000000000`, `${name}. AAAA Z0000000000`]);
  });

  it('is where the sign-in leads back to', () => {
    const [client] = ownOf('AWS::Cognito::UserPoolClient');
    expect(client!['CallbackURLs'][0]).toBe(`https://${name}/sign-in/`);
    expect(client!['AllowedOAuthFlows']).toEqual(['code']);
    expect(client!['GenerateSecret']).toBe(false);
    // No flow by which a page of ours would hold a password.
    expect([...client!['ExplicitAuthFlows']].sort()).toEqual([
      'ALLOW_REFRESH_TOKEN_AUTH',
      'ALLOW_USER_AUTH',
      'ALLOW_USER_SRP_AUTH',
    ]);
    // Minutes. A shift of twelve hours and the way home: nobody signs in at 3 a.m. with gloves on who did so at its start.
    expect(client!['RefreshTokenValidity']).toBe(14 * 60);
    expect(settings.signIn.rememberHours).toBe(14);
    // An hour until a sign-in that was ended from afar is worth nothing.
    expect(client).toMatchObject({
      IdTokenValidity: 60,
      AccessTokenValidity: 60,
      EnableTokenRevocation: true,
      TokenValidityUnits: { IdToken: 'minutes', AccessToken: 'minutes', RefreshToken: 'minutes' },
    });
  });
});

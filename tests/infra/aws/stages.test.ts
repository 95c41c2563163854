import { describe, expect, it } from 'vitest';
import { example, resourcesOf, synthesise, type Resource } from './synthesised.ts';

const { service } = synthesise();

describe('two stages in one account', () => {
  const other = synthesise({
    ...example(),
    stage: 'trial',
    signIn: { ...example().signIn, domainPrefix: 'millrace-hydrants-trial' },
  });
  /** Names that the account or the region has but once. */
  const fixed = (of: Record<string, Resource>): string[] =>
    Object.entries(of).flatMap(([id, { Type, Properties = {} }]) =>
      [
        'TableName',
        'BucketName',
        'FunctionName',
        'RoleName',
        'QueueName',
        'TopicName',
        'LogGroupName',
        'AlarmName',
        'RuleName',
        'UserPoolName',
        'DashboardName',
        'Domain',
      ].flatMap((name) =>
        // A mapping names its function, a filter its log: those are references and no names.
        typeof Properties[name] === 'string' ? [`${Type} ${id} ${name}=${Properties[name]}`] : [],
      ),
    );

  it('share no name', () => {
    const [a, b] = [synthesise(), other].map(
      ({ data, service: own }) => new Set([...fixed(resourcesOf(data)), ...fixed(resourcesOf(own))]),
    );
    expect(a!.size).toBeGreaterThan(0);
    expect([...a!].filter((name) => b!.has(name))).toEqual([]);
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
    expect(client!['RefreshTokenValidity']).toBe(settings.signIn.rememberHours * 60);
  });
});

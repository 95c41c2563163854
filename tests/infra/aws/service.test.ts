import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { PAGE_SECONDS } from '../../../infra/aws/service/cacheTimes.ts';
import { unrouted } from '../../../infra/aws/permissions.ts';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { families, routes } from '../../../shared/deployment/routes.ts';
import { tables } from '../../../shared/deployment/tables.ts';
import { securityHeaders } from '../../../infra/local/answer.ts';
import { example, resourcesOf, synthesise } from './synthesised.ts';

const { service } = synthesise();
const resources = resourcesOf(service);
const ofType = (type: string) => Object.entries(resources).filter(([, { Type }]) => Type === type);
const properties = (type: string) => ofType(type).map(([, { Properties }]) => Properties);

describe('routes', () => {
  const made = Object.fromEntries(
    properties('AWS::ApiGatewayV2::Route').map((route) => [route['RouteKey'], route]),
  );

  it('are those of the table, and no other', () => {
    expect(Object.keys(made).sort()).toEqual(routes.map(({ method, path }) => `${method} ${path}`).sort());
  });

  it.each(routes)(
    '$method $path asks for a sign-in unless anyone may read it',
    ({ method, path, allowed }) => {
      const route = made[`${method} ${path}`]!;
      expect(route['AuthorizationType']).toBe(allowed === 'anyone' ? 'NONE' : 'JWT');
      expect(route['AuthorizerId'] !== undefined).toBe(allowed !== 'anyone');
      if (allowed === 'anyone') expect(method).toBe('GET');
    },
  );

  it.each(routes)('$method $path goes to its family’s function', ({ method, path, family }) => {
    const target = JSON.stringify(made[`${method} ${path}`]!['Target']);
    const integration = Object.keys(resources).find((id) => target.includes(`"${id}"`))!;
    expect(JSON.stringify(resources[integration]!.Properties['IntegrationUri'])).toMatch(
      new RegExp(`"Function${family}Handler`),
    );
  });

  it('are checked against the utility’s own sign-in', () => {
    const authorizers = properties('AWS::ApiGatewayV2::Authorizer');
    expect(authorizers).toHaveLength(1);
    expect(authorizers[0]).toMatchObject({
      AuthorizerType: 'JWT',
      IdentitySource: ['$request.header.Authorization'],
    });
  });

  it('are limited in rate', () => {
    expect(properties('AWS::ApiGatewayV2::Stage')).toEqual([
      expect.objectContaining({
        DefaultRouteSettings: { ThrottlingBurstLimit: 100, ThrottlingRateLimit: 50 },
        StageName: '$default',
      }),
    ]);
  });
});

describe('the log of requests', () => {
  it('holds the route, and neither its path, nor who called, nor from where', () => {
    const [stage] = properties('AWS::ApiGatewayV2::Stage');
    const line = JSON.parse(stage!['AccessLogSettings'].Format as string) as Record<string, string>;
    expect(Object.values(line).sort()).toEqual([
      '$context.authorizer.error',
      '$context.requestId',
      '$context.requestTimeEpoch',
      '$context.responseLatency',
      '$context.routeKey',
      '$context.status',
      'api-request',
    ]);
  });
});

describe('functions', () => {
  const house = ofType('AWS::Lambda::Function').filter(([id]) => id.startsWith('Function'));
  const named = (name: string) =>
    house.find(([id]) => id.startsWith(`Function${name}Handler`))![1].Properties;

  it('are one a family, the builder of packets, the projector, the publisher, the writers of letters and of messages', () => {
    for (const name of [...families, ...unrouted]) expect(named(name)).toBeDefined();
    expect(house).toHaveLength(families.length + unrouted.length);
  });

  it.each(house)('%s runs Node 24 with a log of its own', (id, { Properties }) => {
    expect(Properties).toMatchObject({
      Runtime: 'nodejs24.x',
      // What is compiled comes from the machine that deploys.
      Architectures: [/^Function(packet|display)/.test(id) ? 'x86_64' : 'arm64'],
      Handler: 'index.handler',
    });
    expect(Properties['LoggingConfig']).toEqual({ LogGroup: expect.anything(), LogFormat: 'JSON' });
  });

  it.each(house)(
    '%s gets every name that a handler reads, within the 4 KB that Lambda allows',
    (id, { Properties }) => {
      const variables = Properties['Environment'].Variables as Record<string, unknown>;
      expect(Object.keys(variables).sort()).toEqual(
        [
          ...Object.values(tables).map(({ environment }) => environment),
          environmentNames.evidenceUrl,
          environmentNames.inventoryUrl,
          environmentNames.networkUrl,
          environmentNames.publishedUrl,
          environmentNames.tokenIssuer,
          environmentNames.tokenAudience,
          ...(/^Functionpacket/.test(id) ? [environmentNames.packetKey] : []),
          ...(id.startsWith('Functionpackets') ? [environmentNames.packetJobsFunction] : []),
          ...(id.startsWith('Functionrecords') ? [environmentNames.signInPage] : []),
          ...(id.startsWith('Functiondigest') ? [environmentNames.mail] : []),
          ...(id.startsWith('FunctiondispatchSend') ? [environmentNames.mail, environmentNames.texts] : []),
          ...(id.startsWith('Functionpublish') ? [environmentNames.siteFolder] : []),
          'NODE_OPTIONS',
        ].sort(),
      );
      expect(JSON.stringify(variables).length).toBeLessThan(3000);
    },
  );

  it('build an ordered packet once: what failed is the clerk’s to ask for again', () => {
    const configs = Object.values(resources).filter(({ Type }) => Type === 'AWS::Lambda::EventInvokeConfig');
    expect(
      configs.filter(({ Properties }) => JSON.stringify(Properties).includes('FunctionpacketJobsHandler')),
    ).toMatchObject([{ Properties: { MaximumRetryAttempts: 0 } }]);
  });

  it('publish one at a time', () => {
    expect(named('publish')['ReservedConcurrentExecutions']).toBe(1);
    const small = synthesise({ ...example(), reserveConcurrency: false });
    for (const { Properties } of Object.values(resourcesOf(small.service)))
      expect(Properties ?? {}).not.toHaveProperty('ReservedConcurrentExecutions');
  });

  it('behind the gateway stop before it does', () => {
    for (const family of families) expect(named(family)['Timeout']).toBeLessThan(30);
  });

  it.each(ofType('AWS::Logs::LogGroup'))(
    '%s forgets after the days that the settings say',
    (_, { Properties }) => {
      expect(Properties['RetentionInDays']).toBe(example().logDays);
    },
  );
});

describe('what follows a fact', () => {
  const mappings = properties('AWS::Lambda::EventSourceMapping');
  const of = (name: string) =>
    mappings.find(({ FunctionName }) => JSON.stringify(FunctionName).includes(`Function${name}Handler`))!;

  it('is projected, failing fact by fact, with a bounded number of tries and a queue at the end', () => {
    expect(of('project')).toMatchObject({
      StartingPosition: 'TRIM_HORIZON',
      FunctionResponseTypes: ['ReportBatchItemFailures'],
      BisectBatchOnFunctionError: true,
      MaximumRetryAttempts: 8,
      MaximumRecordAgeInSeconds: 6 * 60 * 60,
      DestinationConfig: { OnFailure: { Destination: expect.anything() } },
    });
  });

  it('is published, and published anyway', () => {
    expect(of('publish')).toMatchObject({
      MaximumRetryAttempts: 2,
      DestinationConfig: { OnFailure: { Destination: expect.anything() } },
    });
    expect(properties('AWS::Events::Rule')).toContainEqual(
      expect.objectContaining({ ScheduleExpression: 'rate(5 minutes)', State: 'ENABLED' }),
    );
  });

  it('is told by letter from the hour of the settings on, by the utility’s clock', () => {
    expect(properties('AWS::Scheduler::Schedule')).toEqual([
      expect.objectContaining({
        ScheduleExpression: 'cron(0 7-23 * * ? *)',
        ScheduleExpressionTimezone: example().utility.timeZone,
        State: 'ENABLED',
      }),
    ]);
    expect(properties('AWS::SES::EmailIdentity').map((sender) => sender['EmailIdentity'])).toEqual([
      example().utility.digest!.from,
      example().utility.dispatchMessages!.from,
    ]);
  });

  it('is told to fire dispatch where it concerns a hydrant or a strike, and again each minute', () => {
    const mapping = of('dispatchSend');
    expect(mapping).toMatchObject({
      StartingPosition: 'TRIM_HORIZON',
      FunctionResponseTypes: ['ReportBatchItemFailures'],
      BisectBatchOnFunctionError: true,
      MaximumRetryAttempts: 8,
      MaximumRecordAgeInSeconds: 6 * 60 * 60,
      DestinationConfig: { OnFailure: { Destination: expect.anything() } },
    });
    expect(
      mapping['FilterCriteria'].Filters.map(({ Pattern }: { Pattern: string }) => JSON.parse(Pattern)),
    ).toEqual([{ dynamodb: { Keys: { partition: { S: ['hydrant', 'strike', 'joined'] } } } }]);
    // The key that the filter names is the table's own.
    expect(tables.projections.partitionKey).toBe('partition');
    const again = properties('AWS::Events::Rule').find(
      ({ ScheduleExpression }) => ScheduleExpression === 'rate(1 minute)',
    )!;
    expect(JSON.stringify(again['Targets'])).toContain('FunctiondispatchSendHandler');
  });

  it('goes to telephones through one topic, encrypted, over TLS alone, each to its own number', () => {
    const [topic, ...others] = ofType('AWS::SNS::Topic').filter(([id]) => !id.startsWith('Operators'));
    expect(others).toEqual([]);
    expect(JSON.stringify(topic![1].Properties['KmsMasterKeyId'])).toContain('alias/aws/sns');
    const policies = JSON.stringify(properties('AWS::SNS::TopicPolicy'));
    expect(policies).toContain('"aws:SecureTransport":"false"');
    const texts = example().utility.dispatchMessages!.to.filter((one) => one.by === 'text');
    const subscriptions = properties('AWS::SNS::Subscription');
    expect(subscriptions.filter(({ Protocol }) => Protocol === 'sms')).toEqual(
      texts.map(({ phone, recipientId }) =>
        expect.objectContaining({
          Protocol: 'sms',
          Endpoint: phone,
          FilterPolicy: { recipient: [recipientId] },
          TopicArn: { Ref: topic![0] },
        }),
      ),
    );
  });

  it.each(['left out', 'turned off'])('no message to dispatch goes out where that is %s', (how) => {
    const { dispatchMessages: set, ...utility } = example().utility;
    const given = how === 'left out' ? utility : { ...utility, dispatchMessages: { ...set!, on: false } };
    const without = Object.values(resourcesOf(synthesise({ ...example(), utility: given }).service));
    expect(
      without.filter(({ Type, Properties }) => /SNS/.test(Type) && Properties['Protocol'] === 'sms'),
    ).toEqual([]);
    expect(JSON.stringify(without)).not.toContain('rate(1 minute)');
    expect(
      without.filter(
        ({ Type, Properties }) =>
          Type === 'AWS::Lambda::EventSourceMapping' && JSON.stringify(Properties).includes('dispatchSend'),
      ),
    ).toEqual([]);
  });

  it('is told to nobody where the settings name nobody', () => {
    const { digest: _, dispatchMessages: __, ...utility } = example().utility;
    const without = Object.values(resourcesOf(synthesise({ ...example(), utility }).service));
    expect(without.filter(({ Type }) => /Scheduler|SES/.test(Type))).toEqual([]);
  });

  it.each(ofType('AWS::SQS::Queue'))('%s keeps what failed for two weeks, encrypted', (_, { Properties }) => {
    expect(Properties).toMatchObject({
      SqsManagedSseEnabled: true,
      MessageRetentionPeriod: 14 * 24 * 60 * 60,
    });
  });
});

describe('pages', () => {
  const [distribution] = properties('AWS::CloudFront::Distribution').map(
    ({ DistributionConfig }) => DistributionConfig,
  );
  const behaviors = [distribution.DefaultCacheBehavior, ...distribution.CacheBehaviors];
  const originOf = (behavior: { TargetOriginId: string }) =>
    distribution.Origins.find(({ Id }: { Id: string }) => Id === behavior.TargetOriginId);

  it('keep their bucket’s id, and the bucket is private', () => {
    const buckets = ofType('AWS::S3::Bucket');
    expect(buckets.map(([id]) => id)).toEqual(['PublishedBucket']);
    expect(buckets[0]![1]).toMatchObject({
      DeletionPolicy: 'Retain',
      Properties: {
        PublicAccessBlockConfiguration: { BlockPublicPolicy: true, RestrictPublicBuckets: true },
      },
    });
  });

  it('are read from the bucket by CloudFront alone', () => {
    const allowed = properties('AWS::S3::BucketPolicy').flatMap(({ PolicyDocument }) =>
      PolicyDocument.Statement.filter(({ Effect }: { Effect: string }) => Effect === 'Allow'),
    );
    const toEdge = allowed.filter(({ Principal }) => Principal.Service === 'cloudfront.amazonaws.com');
    expect(toEdge.length).toBeGreaterThan(0);
    for (const { Condition } of toEdge)
      expect(JSON.stringify(Condition)).toMatch(/"(aws|AWS):SourceArn":.*PagesDistribution/);
    for (const { Principal } of allowed) expect(JSON.stringify(Principal)).not.toContain('"*"');
  });

  it('are never more than a minute old at the edge', () => {
    const short = properties('AWS::CloudFront::CachePolicy');
    expect(short.map(({ CachePolicyConfig }) => CachePolicyConfig.MaxTTL)).toEqual([60]);
    expect(PAGE_SECONDS).toBeLessThanOrEqual(60);
    const [id] = ofType('AWS::CloudFront::CachePolicy')[0]!;
    expect(distribution.DefaultCacheBehavior.CachePolicyId).toEqual({ Ref: id });
  });

  it('and everything else come over https', () => {
    for (const { ViewerProtocolPolicy } of behaviors)
      expect(['redirect-to-https', 'https-only']).toContain(ViewerProtocolPolicy);
  });

  it('carry the security headers', () => {
    const [headers] = properties('AWS::CloudFront::ResponseHeadersPolicy');
    const { SecurityHeadersConfig, CustomHeadersConfig } = headers!['ResponseHeadersPolicyConfig'];
    const policy = JSON.stringify(SecurityHeadersConfig.ContentSecurityPolicy.ContentSecurityPolicy);
    for (const part of [
      "default-src 'none'",
      "script-src 'self'",
      "style-src 'self'",
      "frame-ancestors 'none'",
      "base-uri 'none'",
    ])
      expect(policy).toContain(part);
    expect(policy).not.toContain('unsafe');
    // Nobody may be let in by a scheme or a star.
    expect(policy).not.toMatch(/\*| https:[ ;"]| http:/);
    expect(SecurityHeadersConfig).toMatchObject({
      ContentTypeOptions: { Override: true },
      FrameOptions: { FrameOption: 'DENY' },
      ReferrerPolicy: { ReferrerPolicy: 'same-origin' },
      StrictTransportSecurity: { AccessControlMaxAgeSec: 31_536_000 },
    });
    expect(CustomHeadersConfig.Items.map(({ Header }: { Header: string }) => Header)).toEqual([
      'cross-origin-opener-policy',
      'permissions-policy',
    ]);
    for (const behavior of behaviors) expect(behavior.ResponseHeadersPolicyId).toBeDefined();
  });

  it('carry the same headers as the local server’s, which every browser test is under', () => {
    const [headers] = properties('AWS::CloudFront::ResponseHeadersPolicy');
    const { SecurityHeadersConfig: fixed, CustomHeadersConfig } = headers!['ResponseHeadersPolicyConfig'];
    const deployed: Record<string, string> = {
      'x-content-type-options': fixed.ContentTypeOptions ? 'nosniff' : '',
      'x-frame-options': fixed.FrameOptions.FrameOption,
      'referrer-policy': fixed.ReferrerPolicy.ReferrerPolicy,
      ...Object.fromEntries(
        CustomHeadersConfig.Items.map(({ Header, Value }: { Header: string; Value: string }) => [
          Header,
          Value,
        ]),
      ),
    };
    const { 'content-security-policy': here, ...others } = securityHeaders;
    expect(others).toEqual(deployed);
    // The policy too, but for the hosts that only a deployment has.
    const policy = JSON.stringify(fixed.ContentSecurityPolicy.ContentSecurityPolicy);
    for (const part of here!.split('; ').filter((one) => !/^(img|connect)-src/.test(one)))
      expect(policy).toContain(part);
    expect(policy.match(/[a-z]+-(src|ancestors|action|uri) /g)).toEqual(
      `${here} `.match(/[a-z]+-(src|ancestors|action|uri) /g),
    );
  });

  it('may take pictures of streets from the source that is set, and from nowhere where none is', () => {
    const imagesFrom = (utility: ReturnType<typeof example>['utility']): string => {
      const headers = Object.values(resourcesOf(synthesise({ ...example(), utility }).service)).find(
        ({ Type }) => Type === 'AWS::CloudFront::ResponseHeadersPolicy',
      );
      return /img-src.*?connect-src/.exec(JSON.stringify(headers))?.[0] ?? '';
    };
    const { utility } = example();
    const mapTiles = {
      url: 'https://tiles.example.gov/{z}/{x}/{y}.png',
      attribution: '© Example County',
      maxzoom: 18,
    };
    const set = { ...utility, publishing: { ...utility.publishing, mapTiles } };
    expect(imagesFrom(set)).toContain(' https://tiles.example.gov; connect-src');
    expect(imagesFrom(utility)).toContain("img-src 'self' data: blob: ");
    expect(imagesFrom(utility)).not.toContain('tiles.example.gov');
  });

  it('stand beside the API, whose answers are not cached', () => {
    const api = behaviors.find(({ PathPattern }) => PathPattern === '/api/*');
    // CachingDisabled and AllViewerExceptHostHeader, by the ids in the CloudFront documentation (managed policies).
    expect(api.CachePolicyId).toBe('4135ea2d-6df8-44a3-9df3-4b5a84be39ad');
    expect(api.OriginRequestPolicyId).toBe('b689b0a8-53d0-40ab-baf2-68738e2966ac');
    expect(api.AllowedMethods).toContain('POST');
    expect(originOf(api).CustomOriginConfig.OriginProtocolPolicy).toBe('https-only');
  });

  it.each([
    ['/', '/index.html'],
    ['/hydrants/H-1', '/hydrants/H-1/index.html'],
    ['/hydrants/H-1/', '/hydrants/H-1/index.html'],
    ['/crew/form.html', '/crew/form.html'],
    ['/feed.json', '/feed.json'],
  ])('are found under a folder’s address: %s', (asked, file) => {
    const [edge] = properties('AWS::CloudFront::Function');
    const context = { event: { request: { uri: asked } } };
    const answer = runInNewContext(`${edge!['FunctionCode']}; handler(event);`, context);
    expect(answer.uri).toBe(file);
  });
});

import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';
import { preflightHeaders } from '../../../shared/feeds/cors.ts';
import { resourcesOf, synthesise, type Resource } from './synthesised.ts';

const resources = resourcesOf(synthesise().service);
const [distribution] = Object.values(resources).filter(
  ({ Type }) => Type === 'AWS::CloudFront::Distribution',
);
const { DistributionConfig } = (distribution as Resource).Properties as {
  DistributionConfig: Record<string, any>;
};
const { DefaultCacheBehavior: pages } = DistributionConfig;
const behaviors = DistributionConfig['CacheBehaviors'] as Record<string, any>[];
const feeds = behaviors.find(({ PathPattern }) => PathPattern === '/v1/*')!;
const headersOf = (behavior: Record<string, any>): Record<string, any> =>
  resources[behavior['ResponseHeadersPolicyId'].Ref]!.Properties['ResponseHeadersPolicyConfig'];

describe('feeds on AWS', () => {
  it('are the published files, kept at the edge no longer than a page', () => {
    expect(feeds['TargetOriginId']).toBe(pages.TargetOriginId);
    expect(feeds['CachePolicyId']).toEqual(pages.CachePolicyId);
    expect(feeds['Compress']).toBe(true);
    // Before any other path that could take them.
    expect(behaviors.findIndex((behavior) => behavior === feeds)).toBeLessThan(
      behaviors.findIndex(({ PathPattern }) => PathPattern === '/desk/*'),
    );
  });

  it('are open to every site, without credentials, and nothing else is', () => {
    expect(headersOf(feeds)['CorsConfig']).toMatchObject({
      AccessControlAllowCredentials: false,
      AccessControlAllowOrigins: { Items: ['*'] },
      AccessControlAllowMethods: { Items: ['GET', 'HEAD', 'OPTIONS'] },
      AccessControlExposeHeaders: { Items: ['ETag'] },
      OriginOverride: true,
    });
    for (const behavior of [pages, ...behaviors])
      if (behavior !== feeds && behavior.ResponseHeadersPolicyId)
        expect(headersOf(behavior)).not.toHaveProperty('CorsConfig');
    expect(feeds['AllowedMethods']).toEqual(['GET', 'HEAD', 'OPTIONS']);
  });

  it('a preflight is answered at the edge; whatever else is asked goes on as it came', () => {
    const { FunctionARN } = feeds['FunctionAssociations'][0] as { FunctionARN: { 'Fn::GetAtt': [string] } };
    const { FunctionCode } = resources[FunctionARN['Fn::GetAtt'][0]]!.Properties as { FunctionCode: string };
    const run = runInNewContext(`${FunctionCode}; handler`) as (event: object) => any;
    const answer = run({ request: { method: 'OPTIONS', uri: '/v1/index.json' } });
    expect(answer.statusCode).toBe(204);
    expect(
      Object.fromEntries(
        Object.entries(answer.headers).map(([name, one]) => [name, (one as { value: string }).value]),
      ),
    ).toEqual(preflightHeaders);
    const request = { method: 'GET', uri: '/v1/index.json' };
    expect(run({ request })).toBe(request);
  });
});

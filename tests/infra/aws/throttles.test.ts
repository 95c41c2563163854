import { describe, expect, it } from 'vitest';
import { usualThrottles } from '../../../infra/aws/service/throttles.ts';
import { deploymentSettings } from '../../../infra/aws/settings.ts';
import { routeKey, routes } from '../../../shared/deployment/routes.ts';
import { example, resourcesOf, synthesise } from './synthesised.ts';

const stageOf = (settings = example()) => {
  const resources = resourcesOf(synthesise(settings).service);
  const [stage] = Object.values(resources).filter(({ Type }) => Type === 'AWS::ApiGatewayV2::Stage');
  return { stage: stage!, resources };
};
const { stage, resources } = stageOf();

// AWS::ApiGatewayV2::Stage, RouteSettings: a map from the route key to these two names (CloudFormation reference).
describe('the gateway lets through', () => {
  it('of what costs much, a few a second: routes, written out', () => {
    expect(stage.Properties['RouteSettings']).toMatchObject({
      'POST /api/claims/{claimId}/packet': { ThrottlingRateLimit: 2, ThrottlingBurstLimit: 5 },
      'POST /api/claims/{claimId}/letters': { ThrottlingRateLimit: 2, ThrottlingBurstLimit: 5 },
      'POST /api/search': { ThrottlingRateLimit: 5, ThrottlingBurstLimit: 10 },
      'GET /api/ledger': { ThrottlingRateLimit: 2, ThrottlingBurstLimit: 5 },
      'GET /api/network/{hydrantId}': { ThrottlingRateLimit: 5, ThrottlingBurstLimit: 10 },
      'POST /api/evidence/uploads': { ThrottlingRateLimit: 30, ThrottlingBurstLimit: 100 },
      'GET /api/calendar/{file}': { ThrottlingRateLimit: 5, ThrottlingBurstLimit: 20 },
    });
  });

  it('reports by a limit of their own, which nothing else uses up', () => {
    expect(stage.Properties['RouteSettings']['POST /api/submissions']).toEqual({
      ThrottlingRateLimit: 50,
      ThrottlingBurstLimit: 200,
    });
  });

  it('limits none but routes that there are', () => {
    const keys = routes.map(routeKey);
    expect(Object.keys(usualThrottles).filter((key) => !keys.includes(key))).toEqual([]);
  });

  it('and is made after its routes, which a stage that names them needs', () => {
    const made = Object.entries(resources)
      .filter(([, { Type }]) => Type === 'AWS::ApiGatewayV2::Route')
      .map(([id]) => id);
    expect(made).toHaveLength(routes.length);
    expect((stage as { DependsOn?: string[] }).DependsOn).toEqual(expect.arrayContaining(made));
  });

  it('what a deployment sets, and of the rest what is usual', () => {
    const own = deploymentSettings.parse({
      ...example(),
      throttle: {
        usual: { perSecond: 20, burst: 40 },
        routes: { 'POST /api/search': { perSecond: 1, burst: 2 } },
      },
    });
    const { Properties } = stageOf(own).stage;
    expect(Properties['DefaultRouteSettings']).toEqual({ ThrottlingRateLimit: 20, ThrottlingBurstLimit: 40 });
    expect(Properties['RouteSettings']['POST /api/search']).toEqual({
      ThrottlingRateLimit: 1,
      ThrottlingBurstLimit: 2,
    });
    expect(Properties['RouteSettings']['GET /api/ledger']).toEqual({
      ThrottlingRateLimit: 2,
      ThrottlingBurstLimit: 5,
    });
  });
});

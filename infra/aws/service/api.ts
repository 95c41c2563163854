import { RemovalPolicy, Stack } from 'aws-cdk-lib';
import { AccessLogFormat } from 'aws-cdk-lib/aws-apigateway';
import {
  type CfnStage,
  HttpApi,
  HttpMethod,
  HttpNoneAuthorizer,
  HttpStage,
  LogGroupLogDestination,
} from 'aws-cdk-lib/aws-apigatewayv2';
import { HttpJwtAuthorizer } from 'aws-cdk-lib/aws-apigatewayv2-authorizers';
import { HttpLambdaIntegration } from 'aws-cdk-lib/aws-apigatewayv2-integrations';
import type { IFunction } from 'aws-cdk-lib/aws-lambda';
import { LogGroup, type RetentionDays } from 'aws-cdk-lib/aws-logs';
import { Construct } from 'constructs';
import { families, routes, type Family } from '../../../shared/deployment/routes.ts';
import { routeThrottles, type ThrottleSettings } from './throttles.ts';

export interface ApiProps {
  readonly functions: Readonly<Record<Family, IFunction>>;
  readonly tokenIssuer: string;
  readonly tokenAudience: string;
  readonly logDays: RetentionDays;
  readonly throttle: ThrottleSettings;
}

/**
 * What is kept of a request. The route and never its path, which holds ids, and the secret of a calendar's address; no
 * address of the caller, no token, no name.
 */
const accessLine = JSON.stringify({
  event: 'api-request',
  requestId: '$context.requestId',
  at: '$context.requestTimeEpoch',
  route: '$context.routeKey',
  status: '$context.status',
  ms: '$context.responseLatency',
  refusedBy: '$context.authorizer.error',
});

/**
 * The HTTP API, route by route from the table. The gateway turns away whoever is not signed in; which group may do what
 * is the handler's to say, which checks the token again.
 */
export class Api extends Construct {
  readonly api: HttpApi;

  constructor(scope: Construct, id: string, props: ApiProps) {
    super(scope, id);
    const { functions, tokenIssuer, tokenAudience, logDays, throttle } = props;
    // By name only for who looks for it in the console.
    this.api = new HttpApi(this, 'Http', { apiName: Stack.of(this).stackName, createDefaultStage: false });
    // One utility's people and its public pages; a flood is turned away before it is paid for.
    const stage = new HttpStage(this, 'Stage', {
      httpApi: this.api,
      stageName: '$default',
      autoDeploy: true,
      throttle: { rateLimit: throttle.usual.perSecond, burstLimit: throttle.usual.burst },
      accessLogSettings: {
        destination: new LogGroupLogDestination(
          new LogGroup(this, 'Log', { retention: logDays, removalPolicy: RemovalPolicy.DESTROY }),
        ),
        format: AccessLogFormat.custom(accessLine),
      },
    });
    const signedIn = new HttpJwtAuthorizer('SignedIn', tokenIssuer, { jwtAudience: [tokenAudience] });
    const anyone = new HttpNoneAuthorizer();
    const integrations = Object.fromEntries(
      families.map((family) => [
        family,
        new HttpLambdaIntegration(`Integration-${family}`, functions[family]),
      ]),
    ) as Record<Family, HttpLambdaIntegration>;
    for (const { method, path, family, allowed } of routes) {
      const added = this.api.addRoutes({
        path,
        methods: [HttpMethod[method]],
        integration: integrations[family],
        authorizer: allowed === 'anyone' ? anyone : signedIn,
      });
      // A stage that names a route before it is there cannot be made.
      stage.node.addDependency(...added);
    }
    (stage.node.defaultChild as CfnStage).routeSettings = Object.fromEntries(
      Object.entries(routeThrottles(throttle)).map(([key, { perSecond, burst }]) => [
        key,
        { ThrottlingRateLimit: perSecond, ThrottlingBurstLimit: burst },
      ]),
    );
  }
}

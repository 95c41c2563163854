import { Duration } from 'aws-cdk-lib';
import {
  AllowedMethods,
  Function as EdgeFunction,
  FunctionCode,
  FunctionEventType,
  FunctionRuntime,
  ResponseHeadersPolicy,
  type BehaviorOptions,
} from 'aws-cdk-lib/aws-cloudfront';
import type { Construct } from 'constructs';
import { feedCors, feedsPath, preflightHeaders } from '../../../shared/feeds/cors.ts';
import { dataHeaders } from './securityHeaders.ts';

/** The paths of the feeds for machines, as a behavior of the distribution is named. */
export const feedPaths = `${feedsPath}*`;

/**
 * The feeds: published and cached as the pages are, and open to scripts of every other site. S3 would answer a browser's
 * preflight only by rules on the bucket, so it is answered at the edge and never travels.
 */
export function publicFeeds(scope: Construct, pages: BehaviorOptions): BehaviorOptions {
  return {
    ...pages,
    allowedMethods: AllowedMethods.ALLOW_GET_HEAD_OPTIONS,
    responseHeadersPolicy: new ResponseHeadersPolicy(scope, 'FeedHeaders', {
      corsBehavior: {
        accessControlAllowOrigins: ['*'],
        accessControlAllowMethods: [...feedCors.methods],
        accessControlAllowHeaders: [...feedCors.requestHeaders],
        accessControlExposeHeaders: [...feedCors.exposed],
        accessControlAllowCredentials: false,
        accessControlMaxAge: Duration.seconds(feedCors.maxAgeSeconds),
        originOverride: true,
      },
      securityHeadersBehavior: dataHeaders,
    }),
    functionAssociations: [
      {
        eventType: FunctionEventType.VIEWER_REQUEST,
        function: new EdgeFunction(scope, 'Preflight', {
          runtime: FunctionRuntime.JS_2_0,
          code: FunctionCode.fromInline(preflight),
        }),
      },
    ],
  };
}

const answered = Object.fromEntries(
  Object.entries(preflightHeaders).map(([name, value]) => [name, { value }]),
);
const preflight = `function handler(event) {
  if (event.request.method !== 'OPTIONS') return event.request;
  return { statusCode: 204, statusDescription: 'No Content', headers: ${JSON.stringify(answered)} };
}`;

import { Annotations, Duration, Fn, Stack } from 'aws-cdk-lib';
import type { HttpApi } from 'aws-cdk-lib/aws-apigatewayv2';
import {
  AccessLevel,
  AllowedMethods,
  CachePolicy,
  Distribution,
  Function as EdgeFunction,
  FunctionCode,
  FunctionEventType,
  FunctionRuntime,
  HttpVersion,
  OriginRequestPolicy,
  PriceClass,
  ResponseHeadersPolicy,
  ViewerProtocolPolicy,
  type BehaviorOptions,
} from 'aws-cdk-lib/aws-cloudfront';
import { HttpOrigin, OriginGroup, S3BucketOrigin } from 'aws-cdk-lib/aws-cloudfront-origins';
import type { RetentionDays } from 'aws-cdk-lib/aws-logs';
import type { IBucket } from 'aws-cdk-lib/aws-s3';
import { Construct } from 'constructs';
import { houseBucket } from '../house/houseBucket.ts';
import type { DeploymentSettings } from '../settings.ts';
import { PAGE_SECONDS } from './cacheTimes.ts';
import { enterName, nameOf } from './ownName.ts';
import { feedPaths, publicFeeds } from './publicFeeds.ts';
import { dataHeaders, securityHeaders } from './securityHeaders.ts';
import { deploySiteFiles } from './siteFiles.ts';

/** Where in its bucket the publisher writes; what the site was built with stands beside it, out of its reach. */
export const prefixes = { pages: 'pages/', assets: 'assets/' } as const;

export interface PagesProps {
  readonly evidence: IBucket;
  readonly signInPage: string;
  /** The origin of the map's streets; null: the map has none. */
  readonly streets: string | null;
  /** The built site's client folder. */
  readonly assets: string;
  readonly logDays: RetentionDays;
  /** The utility's own name; null: CloudFront's. */
  readonly domain: DeploymentSettings['domain'];
}

/** Public pages and the site's own files, on CloudFront, with the API under `/api/` of the same address. */
export class Pages extends Construct {
  readonly bucket: IBucket;
  readonly distribution: Distribution;

  constructor(
    scope: Construct,
    id: string,
    { evidence, signInPage, streets, assets, logDays, domain }: PagesProps,
  ) {
    super(scope, id);
    this.bucket = houseBucket(this, 'PublishedBucket', {
      lifecycleRules: [{ noncurrentVersionExpiration: Duration.days(30), expiredObjectDeleteMarker: true }],
      // It can be published anew at any time, but a last good page is worth keeping, so it stays like the others.
    });

    const shared = {
      viewerProtocolPolicy: ViewerProtocolPolicy.REDIRECT_TO_HTTPS,
      responseHeadersPolicy: securityHeaders(this, evidence, signInPage, streets),
      compress: true,
    };
    const fileNames = [
      {
        eventType: FunctionEventType.VIEWER_REQUEST,
        function: new EdgeFunction(this, 'FileNames', {
          runtime: FunctionRuntime.JS_2_0,
          code: FunctionCode.fromInline(fileNameOf),
        }),
      },
    ];
    // The right to list makes a missing page a 404; without it S3 answers 403 for both. Listings cannot be asked for:
    // no query string is passed on and no path is the bucket's own.
    const levels = { originAccessLevels: [AccessLevel.READ, AccessLevel.LIST] };
    const fromAssets = S3BucketOrigin.withOriginAccessControl(this.bucket, {
      ...levels,
      originPath: '/assets',
    });
    const fromPages = S3BucketOrigin.withOriginAccessControl(this.bucket, {
      ...levels,
      originPath: '/pages',
    });
    const fixedName: BehaviorOptions = {
      ...shared,
      // The publisher brings the files that its pages name; a new build's may be there before its deployment's are.
      origin: new OriginGroup({
        primaryOrigin: fromAssets,
        fallbackOrigin: fromPages,
        fallbackStatusCodes: [403, 404],
      }),
      cachePolicy: CachePolicy.CACHING_OPTIMIZED,
    };
    const app: BehaviorOptions = {
      ...shared,
      origin: fromAssets,
      cachePolicy: this.shortCache(),
      functionAssociations: fileNames,
    };
    const published = { ...app, origin: fromPages };
    this.distribution = new Distribution(this, 'Distribution', {
      defaultRootObject: 'index.html',
      httpVersion: HttpVersion.HTTP2_AND_3,
      priceClass: PriceClass.PRICE_CLASS_100,
      ...nameOf(this, domain),
      defaultBehavior: published,
      additionalBehaviors: {
        // Their names change with their content.
        '/_assets/*': fixedName,
        [feedPaths]: publicFeeds(this, published),
        ...Object.fromEntries(appPaths.map((path) => [path, app])),
      },
    });
    Annotations.of(this).acknowledgeWarning(
      '@aws-cdk/aws-cloudfront-origins:listBucketSecurityRisk',
      'A listing cannot be asked for: see above.',
    );
    deploySiteFiles(this, { bucket: this.bucket, prefix: prefixes.assets, folder: assets, logDays });
    if (domain) enterName(this, domain, this.distribution);
  }

  /** The API under the same address: no other origin, so no CORS, and one name to allow in a firewall. */
  addApi(api: HttpApi): void {
    const { region, urlSuffix } = Stack.of(this);
    this.distribution.addBehavior(
      '/api/*',
      new HttpOrigin(Fn.join('', [api.apiId, '.execute-api.', region, '.', urlSuffix])),
      {
        viewerProtocolPolicy: ViewerProtocolPolicy.HTTPS_ONLY,
        allowedMethods: AllowedMethods.ALLOW_ALL,
        cachePolicy: CachePolicy.CACHING_DISABLED,
        originRequestPolicy: OriginRequestPolicy.ALL_VIEWER_EXCEPT_HOST_HEADER,
        responseHeadersPolicy: new ResponseHeadersPolicy(this, 'ApiHeaders', {
          securityHeadersBehavior: dataHeaders,
        }),
        compress: true,
      },
    );
  }

  private shortCache(): CachePolicy {
    return new CachePolicy(this, 'ShortCache', {
      comment: 'Public pages: never older than a minute at the edge',
      minTtl: Duration.seconds(0),
      defaultTtl: Duration.seconds(30),
      maxTtl: Duration.seconds(PAGE_SECONDS),
      enableAcceptEncodingBrotli: true,
      enableAcceptEncodingGzip: true,
    });
  }
}

/** Paths whose pages are built once and read their data through the API; everything else is published. */
const appPaths = ['/crew', '/crew/*', '/desk', '/desk/*', '/sign-in', '/sign-in/*', '/verify', '/verify/*'];

/** A folder's address as its file: S3 behind CloudFront knows no index pages. */
const fileNameOf = `function handler(event) {
  var request = event.request;
  if (request.uri.endsWith('/')) request.uri += 'index.html';
  else if (!request.uri.split('/').pop().includes('.')) request.uri += '/index.html';
  return request;
}`;

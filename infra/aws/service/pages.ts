import { Annotations, Duration, Fn, RemovalPolicy, Stack } from 'aws-cdk-lib';
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
  HeadersFrameOption,
  HeadersReferrerPolicy,
  HttpVersion,
  OriginRequestPolicy,
  PriceClass,
  ResponseHeadersPolicy,
  ViewerProtocolPolicy,
  type BehaviorOptions,
} from 'aws-cdk-lib/aws-cloudfront';
import { HttpOrigin, OriginGroup, S3BucketOrigin } from 'aws-cdk-lib/aws-cloudfront-origins';
import { LogGroup, type RetentionDays } from 'aws-cdk-lib/aws-logs';
import {
  BlockPublicAccess,
  Bucket,
  BucketEncryption,
  type CfnBucket,
  type IBucket,
} from 'aws-cdk-lib/aws-s3';
import { BucketDeployment, CacheControl, Source } from 'aws-cdk-lib/aws-s3-deployment';
import { Construct } from 'constructs';

/** Where in its bucket the publisher writes; what the site was built with stands beside it, out of its reach. */
export const prefixes = { pages: 'pages/', assets: 'assets/' } as const;

/** A page older than its own "do not rely on this after" must never be served from a cache without asking. */
export const PAGE_SECONDS = 60;

export interface PagesProps {
  readonly evidence: IBucket;
  readonly signInPage: string;
  /** The built site's client folder. */
  readonly assets: string;
  readonly logDays: RetentionDays;
}

/** Public pages and the site's own files, on CloudFront, with the API under `/api/` of the same address. */
export class Pages extends Construct {
  readonly bucket: IBucket;
  readonly distribution: Distribution;

  constructor(scope: Construct, id: string, { evidence, signInPage, assets, logDays }: PagesProps) {
    super(scope, id);
    const bucket = new Bucket(this, 'Published', {
      blockPublicAccess: BlockPublicAccess.BLOCK_ALL,
      encryption: BucketEncryption.S3_MANAGED,
      enforceSSL: true,
      minimumTLSVersion: 1.2,
      versioned: true,
      lifecycleRules: [{ noncurrentVersionExpiration: Duration.days(30), expiredObjectDeleteMarker: true }],
      // It can be published anew at any time, but a last good page is worth keeping.
      removalPolicy: RemovalPolicy.RETAIN,
    });
    (bucket.node.defaultChild as CfnBucket).overrideLogicalId('PublishedBucket');
    this.bucket = bucket as IBucket;

    const shared = {
      viewerProtocolPolicy: ViewerProtocolPolicy.REDIRECT_TO_HTTPS,
      responseHeadersPolicy: this.securityHeaders(evidence, signInPage),
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
    this.distribution = new Distribution(this, 'Distribution', {
      defaultRootObject: 'index.html',
      httpVersion: HttpVersion.HTTP2_AND_3,
      priceClass: PriceClass.PRICE_CLASS_100,
      defaultBehavior: {
        ...app,
        origin: fromPages,
      },
      additionalBehaviors: {
        // Their names change with their content.
        '/_assets/*': fixedName,
        ...Object.fromEntries(appPaths.map((path) => [path, app])),
      },
    });
    Annotations.of(this).acknowledgeWarning(
      '@aws-cdk/aws-cloudfront-origins:listBucketSecurityRisk',
      'A listing cannot be asked for: see above.',
    );
    new BucketDeployment(this, 'Assets', {
      destinationBucket: this.bucket,
      destinationKeyPrefix: prefixes.assets,
      sources: [Source.asset(assets)],
      // A page published before this deployment still names the files of the one before.
      prune: false,
      cacheControl: [CacheControl.maxAge(Duration.seconds(PAGE_SECONDS))],
      memoryLimit: 256,
      logGroup: new LogGroup(this, 'AssetsLog', { retention: logDays, removalPolicy: RemovalPolicy.DESTROY }),
    });
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

  private securityHeaders(evidence: IBucket, signInPage: string): ResponseHeadersPolicy {
    const photos = `https://${evidence.bucketRegionalDomainName}`;
    const { region, urlSuffix } = Stack.of(this);
    const issuer = `https://cognito-idp.${region}.${urlSuffix}`;
    const policy = [
      "default-src 'none'",
      "script-src 'self'",
      "style-src 'self'",
      "font-src 'self'",
      "manifest-src 'self'",
      "worker-src 'self'",
      `img-src 'self' data: blob: ${photos}`,
      `connect-src 'self' ${photos} ${issuer} ${signInPage}`,
      "form-action 'self'",
      "base-uri 'none'",
      "frame-ancestors 'none'",
    ].join('; ');
    return new ResponseHeadersPolicy(this, 'SecurityHeaders', {
      securityHeadersBehavior: {
        contentSecurityPolicy: { contentSecurityPolicy: policy, override: true },
        contentTypeOptions: { override: true },
        frameOptions: { frameOption: HeadersFrameOption.DENY, override: true },
        referrerPolicy: { referrerPolicy: HeadersReferrerPolicy.SAME_ORIGIN, override: true },
        strictTransportSecurity: {
          accessControlMaxAge: Duration.days(365),
          includeSubdomains: false,
          override: true,
        },
      },
      customHeadersBehavior: {
        customHeaders: [
          // A crew's form asks where it stands and takes photos; nothing else here needs a device.
          {
            header: 'permissions-policy',
            value: 'camera=(self), geolocation=(self), microphone=(), payment=(), usb=()',
            override: true,
          },
        ],
      },
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

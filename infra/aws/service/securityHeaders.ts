import { Duration, Stack } from 'aws-cdk-lib';
import { HeadersFrameOption, HeadersReferrerPolicy, ResponseHeadersPolicy } from 'aws-cdk-lib/aws-cloudfront';
import type { IBucket } from 'aws-cdk-lib/aws-s3';
import type { Construct } from 'constructs';

/** What every page tells the browser: run nothing but its own files, speak to nobody but these, stand in no frame. */
export function securityHeaders(
  scope: Construct,
  evidence: IBucket,
  signInPage: string,
  /** The origin of the map's streets, where the utility has set one. */
  streets: string | null,
): ResponseHeadersPolicy {
  const photos = `https://${evidence.bucketRegionalDomainName}`;
  const { region, urlSuffix } = Stack.of(scope);
  const issuer = `https://cognito-idp.${region}.${urlSuffix}`;
  const policy = [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    `img-src 'self' data: blob: ${photos}${streets === null ? '' : ` ${streets}`}`,
    `connect-src 'self' ${photos} ${issuer} ${signInPage}`,
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
  return new ResponseHeadersPolicy(scope, 'SecurityHeaders', {
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

import { Duration, Stack } from 'aws-cdk-lib';
import {
  HeadersFrameOption,
  HeadersReferrerPolicy,
  ResponseHeadersPolicy,
  type ResponseSecurityHeadersBehavior,
} from 'aws-cdk-lib/aws-cloudfront';
import type { IBucket } from 'aws-cdk-lib/aws-s3';
import type { Construct } from 'constructs';
import {
  contentPolicy,
  dataPolicy,
  pageHeaders,
  TLS_ONLY_DAYS,
} from '../../../shared/deployment/pageHeaders.ts';

/** What every answer says, under the policy that is given. */
const behavior = (policy: string): ResponseSecurityHeadersBehavior => ({
  contentSecurityPolicy: { contentSecurityPolicy: policy, override: true },
  contentTypeOptions: { override: true },
  frameOptions: { frameOption: HeadersFrameOption.DENY, override: true },
  referrerPolicy: { referrerPolicy: HeadersReferrerPolicy.SAME_ORIGIN, override: true },
  strictTransportSecurity: {
    accessControlMaxAge: Duration.days(TLS_ONLY_DAYS),
    includeSubdomains: false,
    override: true,
  },
});

/** What every page tells the browser: run nothing but its own files, speak to nobody but these, stand in no frame. */
export function securityHeaders(
  scope: Construct,
  evidence: IBucket,
  signInPage: string,
  /** The origin of the map's streets, where the utility has set one. */
  streets: string | null,
): ResponseHeadersPolicy {
  const { region, urlSuffix } = Stack.of(scope);
  const policy = contentPolicy({
    photos: `https://${evidence.bucketRegionalDomainName}`,
    signIn: [`https://cognito-idp.${region}.${urlSuffix}`, signInPage],
    streets,
  });
  // CloudFront knows the others by fields of their own.
  const custom = (['cross-origin-opener-policy', 'permissions-policy'] as const).map((header) => ({
    header,
    value: pageHeaders[header],
    override: true,
  }));
  return new ResponseHeadersPolicy(scope, 'SecurityHeaders', {
    securityHeadersBehavior: behavior(policy),
    customHeadersBehavior: { customHeaders: custom },
  });
}

/** What is data and no page: feeds, and what the API answers. The answer itself may say that its address is a secret. */
export const dataHeaders: ResponseSecurityHeadersBehavior = {
  ...behavior(dataPolicy),
  referrerPolicy: { referrerPolicy: HeadersReferrerPolicy.SAME_ORIGIN, override: false },
};

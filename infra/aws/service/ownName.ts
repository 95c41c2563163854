import { Certificate } from 'aws-cdk-lib/aws-certificatemanager';
import {
  SecurityPolicyProtocol,
  type Distribution,
  type DistributionProps,
} from 'aws-cdk-lib/aws-cloudfront';
import { AaaaRecord, ARecord, HostedZone, RecordTarget } from 'aws-cdk-lib/aws-route53';
import { CloudFrontTarget } from 'aws-cdk-lib/aws-route53-targets';
import type { Construct } from 'constructs';
import type { DeploymentSettings } from '../settings.ts';

type Domain = DeploymentSettings['domain'];

/** The name and certificate of the distribution; nothing where it has none of its own. */
export const nameOf = (
  scope: Construct,
  domain: Domain,
): Pick<DistributionProps, 'domainNames' | 'certificate' | 'minimumProtocolVersion'> =>
  domain === null
    ? {}
    : {
        domainNames: [domain.name],
        certificate: Certificate.fromCertificateArn(scope, 'Certificate', domain.certificateArn),
        minimumProtocolVersion: SecurityPolicyProtocol.TLS_V1_2_2021,
      };

/** Enters the name where the settings say that its zone is kept here; nothing is looked up, so a synth needs no account. */
export function enterName(scope: Construct, domain: NonNullable<Domain>, to: Distribution): void {
  if (domain.hostedZone === null) return;
  const { id: hostedZoneId, name: zoneName } = domain.hostedZone;
  const zone = HostedZone.fromHostedZoneAttributes(scope, 'Zone', { hostedZoneId, zoneName });
  const record = {
    zone,
    recordName: `${domain.name}.`,
    target: RecordTarget.fromAlias(new CloudFrontTarget(to)),
  };
  new ARecord(scope, 'Name', record);
  new AaaaRecord(scope, 'NameV6', record);
}

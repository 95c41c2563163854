import { Duration, RemovalPolicy, Stack } from 'aws-cdk-lib';
import { PolicyStatement, Role, ServicePrincipal } from 'aws-cdk-lib/aws-iam';
import { LogGroup, type RetentionDays } from 'aws-cdk-lib/aws-logs';
import type { IBucket } from 'aws-cdk-lib/aws-s3';
import { BucketDeployment, CacheControl, Source } from 'aws-cdk-lib/aws-s3-deployment';
import type { Construct } from 'constructs';
import { PAGE_SECONDS } from './cacheTimes.ts';

export interface SiteFilesProps {
  readonly bucket: IBucket;
  /** Where in the bucket. */
  readonly prefix: string;
  /** The built site's client folder. */
  readonly folder: string;
  readonly logDays: RetentionDays;
}

/**
 * Brings the site's own files while a deployment runs, where the build is another than the last; then all of them, because
 * the helper unpacks them anew and cannot tell which changed. None is taken away, because a page published before still
 * names them. What changes of itself, the published pages, is compared file by file (`functions/publish/write.ts`). The CDK's helper would get every right on the whole bucket; this role lets it read
 * what the CLI uploaded and write under the prefix.
 */
export function deploySiteFiles(scope: Construct, { bucket, prefix, folder, logDays }: SiteFilesProps): void {
  const log = new LogGroup(scope, 'AssetsLog', { retention: logDays, removalPolicy: RemovalPolicy.DESTROY });
  const role = new Role(scope, 'AssetsRole', { assumedBy: new ServicePrincipal('lambda.amazonaws.com') });
  const { partition, account, region } = Stack.of(scope);
  // Where `cdk bootstrap` has the CLI put what a deployment brings.
  const uploaded = `arn:${partition}:s3:::cdk-hnb659fds-assets-${account}-${region}`;
  const may = (actions: string[], ...resources: string[]): void =>
    void role.addToPolicy(new PolicyStatement({ actions, resources }));
  may(['logs:CreateLogStream', 'logs:PutLogEvents'], log.logGroupArn);
  may(['s3:GetObject'], `${uploaded}/*`);
  may(['s3:GetObject', 's3:PutObject', 's3:AbortMultipartUpload'], `${bucket.bucketArn}/${prefix}*`);
  may(['s3:ListBucket'], bucket.bucketArn, uploaded);
  may(['s3:GetBucketLocation'], bucket.bucketArn, uploaded);
  new BucketDeployment(scope, 'Assets', {
    destinationBucket: bucket,
    destinationKeyPrefix: prefix,
    sources: [Source.asset(folder)],
    prune: false,
    cacheControl: [CacheControl.maxAge(Duration.seconds(PAGE_SECONDS))],
    memoryLimit: 256,
    logGroup: log,
    role: role.withoutPolicyUpdates(),
  });
}

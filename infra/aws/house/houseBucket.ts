import { RemovalPolicy } from 'aws-cdk-lib';
import {
  BlockPublicAccess,
  Bucket,
  BucketEncryption,
  type BucketProps,
  type IBucket,
} from 'aws-cdk-lib/aws-s3';
import type { Construct } from 'constructs';
import { pin } from './houseTable.ts';

/** A bucket with the house's defaults: private, encrypted, TLS alone, every version kept, and kept itself. */
export function houseBucket(scope: Construct, logicalId: string, props: BucketProps = {}): IBucket {
  const bucket = new Bucket(scope, logicalId, {
    blockPublicAccess: BlockPublicAccess.BLOCK_ALL,
    encryption: BucketEncryption.S3_MANAGED,
    enforceSSL: true,
    minimumTLSVersion: 1.2,
    versioned: true,
    removalPolicy: RemovalPolicy.RETAIN,
    ...props,
  });
  pin(bucket, logicalId);
  return bucket as IBucket;
}

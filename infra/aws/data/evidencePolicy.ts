import { AnyPrincipal, Effect, PolicyStatement } from 'aws-cdk-lib/aws-iam';
import type { IBucket } from 'aws-cdk-lib/aws-s3';

type Conditions = Readonly<Record<string, Readonly<Record<string, string>>>>;

/**
 * What the evidence store refuses of everybody, whatever rights they have beside it. Conditions by "Enforce conditional
 * writes on Amazon S3 buckets" and "Actions, resources, and condition keys for Amazon S3" (Amazon S3 user guide; service
 * authorization reference).
 */
export function guardEvidence(bucket: IBucket): void {
  const refuse = (sid: string, conditions: Conditions): void => {
    bucket.addToResourcePolicy(
      new PolicyStatement({
        sid,
        effect: Effect.DENY,
        principals: [new AnyPrincipal()],
        actions: ['s3:PutObject'],
        resources: [bucket.arnForObjects('*')],
        conditions,
      }),
    );
  };
  // A second object under a name would hide the first one. Parts of an upload carry no such header, its end does.
  refuse('WriteOnlyWhatIsNotThere', {
    Null: { 's3:if-none-match': 'true' },
    Bool: { 's3:ObjectCreationOperation': 'true' },
  });
  // With a key of the sender's own nobody else could ever read it again.
  refuse('NoKeyOfTheSender', { Null: { 's3:x-amz-server-side-encryption-customer-algorithm': 'false' } });
  // Who says nothing gets the bucket's own encryption.
  refuse('NoOtherEncryption', {
    Null: { 's3:x-amz-server-side-encryption': 'false' },
    StringNotEquals: { 's3:x-amz-server-side-encryption': 'AES256' },
  });
}

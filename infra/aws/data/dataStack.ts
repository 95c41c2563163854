import { CfnOutput, Duration, RemovalPolicy, Stack, type App, type StackProps } from 'aws-cdk-lib';
import type { ITable } from 'aws-cdk-lib/aws-dynamodb';
import { Key, KeySpec, KeyUsage, type IKey } from 'aws-cdk-lib/aws-kms';
import { HttpMethods, ObjectLockRetention, type CfnBucket, type IBucket } from 'aws-cdk-lib/aws-s3';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';
import { houseBucket } from '../house/houseBucket.ts';
import { houseTable, pin } from '../house/houseTable.ts';
import type { DeploymentSettings } from '../settings.ts';
import { guardEvidence } from './evidencePolicy.ts';
import { People } from './people.ts';

/** Tables whose changes somebody follows: facts feed the projector, projections the publisher. */
const followed: readonly TableName[] = ['submissions', 'projections'];

/** Logical ids of the buckets. Like the tables', a change would make CloudFormation start an empty one. */
export const bucketIds = {
  evidence: 'EvidenceBucket',
  inventory: 'InventoryBucket',
  network: 'NetworkBucket',
  accessLog: 'AccessLogBucket',
} as const;

/** Who asked the private stores for what, by which right: longer than a claim is usually disputed, days. */
const ACCESS_LOG_DAYS = 400;

/**
 * What must outlive everything else: the facts, the evidence, the inventory, the people. Small, changed seldom, and
 * nothing in it is deleted with the stack. What can be made anew stands in the service stack.
 */
export class DataStack extends Stack {
  readonly tables: Readonly<Record<TableName, ITable>>;
  readonly evidence: IBucket;
  readonly inventory: IBucket;
  /** Network models: of all that is kept here what most wants to stay private after the people. */
  readonly network: IBucket;
  readonly people: People;
  /** Signs packets. With it gone, no earlier packet could be told to be the utility's own. */
  readonly packetKey: IKey;

  constructor(app: App, id: string, settings: DeploymentSettings, props: StackProps) {
    super(app, id, { ...props, terminationProtection: true });
    this.tables = Object.fromEntries(
      (Object.keys(tables) as TableName[]).map((name) => [
        name,
        houseTable(this, { name, followed: followed.includes(name) }),
      ]),
    ) as Record<TableName, ITable>;

    const accessLog = houseBucket(this, bucketIds.accessLog, {
      lifecycleRules: [
        { expiration: Duration.days(ACCESS_LOG_DAYS), noncurrentVersionExpiration: Duration.days(1) },
      ],
    });
    const logged = (name: string) => ({
      serverAccessLogsBucket: accessLog,
      serverAccessLogsPrefix: `${name}/`,
    });
    this.evidence = houseBucket(this, bucketIds.evidence, {
      ...logged('evidence'),
      objectLockEnabled: true,
      objectLockDefaultRetention: ObjectLockRetention.governance(Duration.days(settings.evidence.lockedDays)),
      // A browser sends photos straight here. What lets it is the signed address, which names one object and its
      // hash; the origin is not a secret and only keeps other pages from reading the answer.
      cors: [
        {
          allowedMethods: [HttpMethods.PUT, HttpMethods.GET],
          allowedOrigins: [settings.utility.publicUrl?.replace(/\/$/, '') ?? 'https://*.cloudfront.net'],
          allowedHeaders: ['content-type', 'if-none-match', 'x-amz-checksum-sha256'],
          exposedHeaders: ['etag'],
          maxAge: 3600,
        },
      ],
      lifecycleRules: [{ abortIncompleteMultipartUploadAfter: Duration.days(1) }],
    });
    guardEvidence(this.evidence);
    // By the bucket's own property: the construct's way would bring a function that may change the bucket.
    (this.evidence.node.defaultChild as CfnBucket).notificationConfiguration = {
      eventBridgeConfiguration: { eventBridgeEnabled: true },
    };
    this.inventory = houseBucket(this, bucketIds.inventory, logged('inventory'));
    this.network = houseBucket(this, bucketIds.network, logged('network'));
    const packetKey = new Key(this, 'PacketKey', {
      description: 'Signs claim packets',
      keySpec: KeySpec.ECC_NIST_P256,
      keyUsage: KeyUsage.SIGN_VERIFY,
      removalPolicy: RemovalPolicy.RETAIN,
    });
    pin(packetKey, 'PacketKey');
    this.packetKey = packetKey;
    this.people = new People(this, 'People', settings);
    this.sayWhereThingsAre();
  }

  /** What an operator's own commands are given: `npm run import` and the like, and a restore. */
  private sayWhereThingsAre(): void {
    for (const [name, table] of Object.entries(this.tables))
      new CfnOutput(this, `${name}TableName`, { value: table.tableName });
    new CfnOutput(this, 'evidenceUrl', {
      value: `s3://${this.evidence.bucketName}/`,
      description: 'Set as EVIDENCE_URL for npm run backup, restore and erase',
    });
    new CfnOutput(this, 'inventoryUrl', {
      value: `s3://${this.inventory.bucketName}/`,
      description: 'Set as INVENTORY_URL for npm run import and npm run network',
    });
    new CfnOutput(this, 'networkUrl', {
      value: `s3://${this.network.bucketName}/`,
      description: 'Set as NETWORK_URL for npm run network',
    });
    new CfnOutput(this, 'peoplePoolId', {
      value: this.people.pool.userPoolId,
      description: 'People are added here (docs/operations/people.md)',
    });
  }
}

import { CfnOutput, Duration, RemovalPolicy, Stack, type App, type StackProps } from 'aws-cdk-lib';
import {
  AttributeType,
  BillingMode,
  StreamViewType,
  Table,
  TableEncryption,
  type ITable,
} from 'aws-cdk-lib/aws-dynamodb';
import { Key, KeySpec, KeyUsage, type CfnKey, type IKey } from 'aws-cdk-lib/aws-kms';
import {
  BlockPublicAccess,
  Bucket,
  BucketEncryption,
  HttpMethods,
  ObjectLockRetention,
  type BucketProps,
  type CfnBucket,
  type IBucket,
} from 'aws-cdk-lib/aws-s3';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';
import type { DeploymentSettings } from '../settings.ts';
import { People } from './people.ts';

/** Tables whose changes somebody follows: facts feed the projector, projections the publisher. */
const followed: readonly TableName[] = ['submissions', 'projections'];

/** Logical ids of the buckets. Like the tables', a change would make CloudFormation start an empty one. */
export const bucketIds = {
  evidence: 'EvidenceBucket',
  inventory: 'InventoryBucket',
  network: 'NetworkBucket',
} as const;

const house = {
  blockPublicAccess: BlockPublicAccess.BLOCK_ALL,
  encryption: BucketEncryption.S3_MANAGED,
  enforceSSL: true,
  minimumTLSVersion: 1.2,
  versioned: true,
  removalPolicy: RemovalPolicy.RETAIN,
} satisfies BucketProps;

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
      (Object.keys(tables) as TableName[]).map((name) => [name, this.table(name)]),
    ) as Record<TableName, ITable>;

    this.evidence = this.bucket('evidence', {
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
    // By the bucket's own property: the construct's way would bring a function that may change the bucket.
    (this.evidence.node.defaultChild as CfnBucket).notificationConfiguration = {
      eventBridgeConfiguration: { eventBridgeEnabled: true },
    };
    this.inventory = this.bucket('inventory', {});
    this.network = this.bucket('network', {});
    const packetKey = new Key(this, 'PacketKey', {
      description: 'Signs claim packets',
      keySpec: KeySpec.ECC_NIST_P256,
      keyUsage: KeyUsage.SIGN_VERIFY,
      removalPolicy: RemovalPolicy.RETAIN,
    });
    (packetKey.node.defaultChild as CfnKey).overrideLogicalId('PacketKey');
    this.packetKey = packetKey;
    this.people = new People(this, 'People', settings);

    for (const [name, table] of Object.entries(this.tables))
      new CfnOutput(this, `${name}TableName`, { value: table.tableName });
    new CfnOutput(this, 'inventoryBucketName', { value: this.inventory.bucketName });
    new CfnOutput(this, 'networkBucketName', { value: this.network.bucketName });
  }

  private table(name: TableName): ITable {
    const { logicalId, partitionKey, sortKey } = tables[name];
    const table = new Table(this, logicalId, {
      partitionKey: { name: partitionKey, type: AttributeType.STRING },
      sortKey: { name: sortKey, type: AttributeType.STRING },
      billingMode: BillingMode.PAY_PER_REQUEST,
      pointInTimeRecoverySpecification: { pointInTimeRecoveryEnabled: true },
      encryption: TableEncryption.AWS_MANAGED,
      deletionProtection: true,
      removalPolicy: RemovalPolicy.RETAIN,
      ...(followed.includes(name) ? { stream: StreamViewType.KEYS_ONLY } : {}),
    });
    this.pin(table, logicalId);
    return table as ITable;
  }

  private bucket(name: keyof typeof bucketIds, props: BucketProps): IBucket {
    const bucket = new Bucket(this, bucketIds[name], { ...house, ...props });
    this.pin(bucket, bucketIds[name]);
    return bucket as IBucket;
  }

  /** Without this a moved construct gets another logical id, and with it a new, empty table. */
  private pin(of: Table | Bucket, logicalId: string): void {
    (of.node.defaultChild as CfnBucket).overrideLogicalId(logicalId);
  }
}

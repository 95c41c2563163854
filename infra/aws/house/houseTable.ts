import { RemovalPolicy, type CfnResource } from 'aws-cdk-lib';
import {
  AttributeType,
  BillingMode,
  StreamViewType,
  Table,
  TableEncryption,
  type ITable,
} from 'aws-cdk-lib/aws-dynamodb';
import type { Construct } from 'constructs';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';

export interface HouseTableProps {
  readonly name: TableName;
  /** Whether a function follows its changes; keys are all that one is told. */
  readonly followed: boolean;
}

/** A table with the house's defaults: paid by use, with point-in-time recovery, encrypted, protected and kept. */
export function houseTable(scope: Construct, { name, followed }: HouseTableProps): ITable {
  const { logicalId, partitionKey, sortKey } = tables[name];
  const table = new Table(scope, logicalId, {
    partitionKey: { name: partitionKey, type: AttributeType.STRING },
    sortKey: { name: sortKey, type: AttributeType.STRING },
    billingMode: BillingMode.PAY_PER_REQUEST,
    pointInTimeRecoverySpecification: { pointInTimeRecoveryEnabled: true },
    encryption: TableEncryption.AWS_MANAGED,
    deletionProtection: true,
    removalPolicy: RemovalPolicy.RETAIN,
    ...(followed ? { stream: StreamViewType.KEYS_ONLY } : {}),
  });
  pin(table, logicalId);
  return table as ITable;
}

/** Without this a moved construct gets another logical id, and with it a new, empty store. */
export const pin = (of: Construct, logicalId: string): void =>
  (of.node.defaultChild as CfnResource).overrideLogicalId(logicalId);

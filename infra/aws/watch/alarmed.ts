import type { HttpApi } from 'aws-cdk-lib/aws-apigatewayv2';
import type { ITopic } from 'aws-cdk-lib/aws-sns';
import type { IQueue } from 'aws-cdk-lib/aws-sqs';
import type { HouseAlarmProps } from '../house/houseAlarm.ts';
import type { HouseFunction } from '../house/houseFunction.ts';
import type { FunctionName } from '../permissions.ts';
import type { DeploymentSettings } from '../settings.ts';

export type FailureQueue = 'ProjectFailures' | 'PublishFailures' | 'DispatchFailures' | 'DisplayFailures';

export interface AlarmsProps {
  readonly settings: DeploymentSettings;
  readonly functions: Readonly<Record<FunctionName, HouseFunction>>;
  readonly queues: Readonly<Partial<Record<FailureQueue, IQueue>>>;
  readonly api: HttpApi;
  readonly tells: ITopic;
}

/** An alarm before it is said whom it tells. */
export type Alarmed = Omit<HouseAlarmProps, 'tells'>;

import { Duration, Stack } from 'aws-cdk-lib';
import {
  AlarmStatusWidget,
  Dashboard,
  GraphWidget,
  Metric,
  Stats,
  TextWidget,
  type Alarm,
  type IMetric,
} from 'aws-cdk-lib/aws-cloudwatch';
import type { HttpApi } from 'aws-cdk-lib/aws-apigatewayv2';
import type { Construct } from 'constructs';
import type { HouseFunction } from '../house/houseFunction.ts';
import type { FunctionName } from '../permissions.ts';

export interface WatchPageProps {
  readonly alarms: readonly Alarm[];
  readonly functions: Readonly<Record<FunctionName, HouseFunction>>;
  readonly api: HttpApi;
  readonly distributionId: string;
  readonly utility: string;
  readonly stage: string;
}

/** One page to look at: what rings, then what people feel, then the functions one by one. */
export function watchPage(scope: Construct, props: WatchPageProps): Dashboard {
  const { alarms, functions, api, distributionId, utility, stage } = props;
  const each = Object.entries(functions);
  const graph = (title: string, left: IMetric[]): GraphWidget =>
    new GraphWidget({ title, left, width: 12, height: 6 });
  const edge = (metricName: string): Metric =>
    new Metric({
      namespace: 'AWS/CloudFront',
      metricName,
      dimensionsMap: { DistributionId: distributionId, Region: 'Global' },
      // CloudFront's numbers are kept there, whatever the region of the rest.
      region: 'us-east-1',
      statistic: Stats.AVERAGE,
      period: Duration.minutes(5),
    });
  const period = Duration.minutes(5);
  return new Dashboard(scope, 'Dashboard', {
    dashboardName: Stack.of(scope).stackName,
    widgets: [
      [
        new TextWidget({
          markdown: `# ${utility} (${stage})\nWhat rings says who is hurt and what to do. The handbook: \`docs/operations/\`.`,
          width: 24,
          height: 2,
        }),
      ],
      [new AlarmStatusWidget({ alarms: [...alarms], title: 'What rings', width: 24, height: 5 })],
      [
        graph('API: requests and faults', [
          api.metricCount({ period }),
          api.metricClientError({ period }),
          api.metricServerError({ period }),
        ]),
        graph('API: how long an answer takes (95th percentile, ms)', [
          api.metricLatency({ period, statistic: 'p95' }),
        ]),
      ],
      [
        graph('Public pages: share of errors, %', [edge('4xxErrorRate'), edge('5xxErrorRate')]),
        graph(
          'How far behind, ms',
          (['project', 'publish', 'dispatchSend'] as const).map((name) =>
            functions[name].fn.metric('IteratorAge', { period, statistic: Stats.MAXIMUM, label: name }),
          ),
        ),
      ],
      [
        graph(
          'Errors by function',
          each.map(([label, { fn }]) => fn.metricErrors({ period, label })),
        ),
        graph(
          'Duration by function (95th percentile, ms)',
          each.map(([label, { fn }]) => fn.metricDuration({ period, statistic: 'p95', label })),
        ),
      ],
    ],
  });
}

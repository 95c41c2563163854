import type { Standing } from '../../../infra/aws/costs/bill.ts';
import type { Schedule } from '../../../infra/aws/costs/schedule.ts';
import type { DeploymentSettings } from '../../../infra/aws/settings.ts';
import { resourcesOf, type Resource, type synthesise } from './synthesised.ts';

/** What a deployment pays for by the month, counted in its templates. */
export function standingOf({ data, service }: ReturnType<typeof synthesise>): Standing {
  const all = [...Object.values(resourcesOf(data)), ...Object.values(resourcesOf(service))];
  const of = (type: string): Resource[] => all.filter(({ Type }) => Type === type);
  /** An alarm on a sum of metrics is billed for each of them. */
  const metricsOf = ({ Properties }: Resource): number => {
    const parts = (Properties['Metrics'] ?? []) as { MetricStat?: object }[];
    return Math.max(1, parts.filter((part) => part.MetricStat !== undefined).length);
  };
  return {
    alarmMetrics: of('AWS::CloudWatch::Alarm').reduce((sum, alarm) => sum + metricsOf(alarm), 0),
    countedMetrics: of('AWS::Logs::MetricFilter').length,
    dashboards: of('AWS::CloudWatch::Dashboard').length,
    keys: of('AWS::KMS::Key').length,
  };
}

export const scheduleOf = ({ utility: { publishing, digest } }: DeploymentSettings): Schedule => ({
  publishEveryMinutes: publishing.everyMinutes,
  relyForMinutes: publishing.relyForMinutes,
  digestFromHour: digest?.hour ?? 24,
});

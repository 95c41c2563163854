import { Alarm, ComparisonOperator, TreatMissingData, type IMetric } from 'aws-cdk-lib/aws-cloudwatch';
import { SnsAction } from 'aws-cdk-lib/aws-cloudwatch-actions';
import type { ITopic } from 'aws-cdk-lib/aws-sns';
import { Construct } from 'constructs';

export interface HouseAlarmProps {
  readonly metric: IMetric;
  /** Who is hurt, and how: one sentence that a person woken by it understands. */
  readonly hurts: string;
  /** What to do first: one or two sentences. */
  readonly todo: string;
  /** The page of the handbook, in `docs/operations/`. */
  readonly page: string;
  /** Rings when the metric is at least this; with `below`, when it is less. */
  readonly atLeast: number;
  readonly below?: true;
  /** For so many periods of the metric one after the other. */
  readonly periods: number;
  /** What no value means: nothing happened, or what should have said something is silent. */
  readonly silence: 'well' | 'broken';
  readonly tells: ITopic;
}

/** An alarm says who is hurt and what to do; one that could not say it would only teach people to look away. */
export class HouseAlarm extends Construct {
  readonly alarm: Alarm;

  constructor(scope: Construct, id: string, props: HouseAlarmProps) {
    super(scope, id);
    this.alarm = new Alarm(this, 'Alarm', {
      metric: props.metric,
      alarmDescription: `WHO IS HURT: ${props.hurts}\nWHAT TO DO: ${props.todo}\nMore: docs/operations/${props.page}`,
      threshold: props.atLeast,
      comparisonOperator: props.below
        ? ComparisonOperator.LESS_THAN_THRESHOLD
        : ComparisonOperator.GREATER_THAN_OR_EQUAL_TO_THRESHOLD,
      evaluationPeriods: props.periods,
      treatMissingData:
        props.silence === 'broken' ? TreatMissingData.BREACHING : TreatMissingData.NOT_BREACHING,
    });
    const tell = new SnsAction(props.tells);
    this.alarm.addAlarmAction(tell);
    // That it is over is news as well: nobody has to look.
    this.alarm.addOkAction(tell);
  }
}

import { Duration } from 'aws-cdk-lib';
import { MathExpression, type Metric, Stats, type Alarm } from 'aws-cdk-lib/aws-cloudwatch';
import type { IQueue } from 'aws-cdk-lib/aws-sqs';
import { Construct } from 'constructs';
import { families } from '../../../shared/deployment/routes.ts';
import { HouseAlarm } from '../house/houseAlarm.ts';
import type { Alarmed, AlarmsProps, FailureQueue } from './alarmed.ts';
import { evidenceAlarms } from './evidenceAlarms.ts';
import { behindOf, errorsOf, laidAside, loggedEvent } from './metrics.ts';

/** Every alarm, read top to bottom: who is hurt, what to do, and from what on. */
export class Alarms extends Construct {
  readonly all: readonly Alarm[];

  constructor(scope: Construct, id: string, props: AlarmsProps) {
    super(scope, id);
    const list = {
      ...this.ofThePublicPage(props),
      ...this.ofWhatPeopleSend(props),
      ...evidenceAlarms(this, props),
      ...this.ofQueues(props),
      ...this.ofWhatGoesOut(props),
    };
    this.all = Object.entries(list).map(
      ([name, alarm]) => new HouseAlarm(this, name, { ...alarm, tells: props.tells }).alarm,
    );
  }

  private ofThePublicPage({ settings, functions }: AlarmsProps): Record<string, Alarmed> {
    const { everyMinutes, relyForMinutes } = settings.utility.publishing;
    const page = 'page-stale.md';
    return {
      PageNotPublished: {
        // Twice the interval, and before readers are told not to rely on the page.
        metric: loggedEvent(this, functions.publish, 'published', everyMinutes),
        below: true,
        atLeast: 1,
        periods: Math.max(1, Math.min(2, Math.floor(relyForMinutes / everyMinutes))),
        silence: 'broken',
        hurts: `Fire crews and residents: the public page of hydrants stands still, and tells them not to rely on it ${relyForMinutes} minutes after it was last checked.`,
        todo: 'Tell dispatch to ask the utility by telephone. Then read the last line "public-page-kept" in the log of the publisher: it names why.',
        page,
      },
      PageRefused: {
        metric: loggedEvent(this, functions.publish, 'publishRefused', 15),
        atLeast: 2,
        periods: 1,
        silence: 'well',
        hurts:
          'Readers of the public page: a change was not published because what would have been shown is not valid; they see the page as it last was.',
        todo: 'Read "reasons" in that line of the log. A fact that cannot be shown is corrected on its own form; anything else is ours to repair.',
        page,
      },
      PageBehind: {
        // One page that the projector was a moment too late for is made good by the next.
        metric: loggedEvent(this, functions.publish, 'publishedBehind', everyMinutes),
        atLeast: 1,
        periods: 2,
        silence: 'well',
        hurts:
          'Fire crews and residents: reports were taken that the public page does not show yet. It says so; a hydrant that is out may be missing from it.',
        todo: 'Tell dispatch that the list is not whole and to ask the utility by telephone. Then read the log of "project": what it fails on is missing from the page.',
        page,
      },
    };
  }

  private ofWhatPeopleSend({ functions, api }: AlarmsProps): Record<string, Alarmed> {
    const { submissions } = functions;
    const faults = new MathExpression({
      // No line of an event is no value, and a sum with one of those would be none either.
      expression: 'FILL(fault, 0) + FILL(away, 0) + FILL(crash, 0) + FILL(held, 0)',
      usingMetrics: {
        fault: loggedEvent(this, submissions, 'requestFailed', 5),
        away: loggedEvent(this, submissions, 'storeUnavailable', 5),
        crash: errorsOf(submissions, 5),
        held: submissions.fn.metricThrottles({ period: Duration.minutes(5), statistic: Stats.SUM }),
      },
      period: Duration.minutes(5),
    });
    return {
      ReportsNotTaken: {
        metric: faults,
        atLeast: 3,
        periods: 1,
        silence: 'well',
        hurts:
          'Crews and clerks: what they hand in is not taken. Their phones keep it and try again; dispatch and the public hear nothing of it meanwhile.',
        todo: 'Tell crews to report hydrants out of service to dispatch by telephone until this is over. Look at the log of the function "submissions" for "request-failed" and "store-unavailable".',
        page: 'api-failing.md',
      },
      ApiFailing: {
        metric: api.metricServerError({ period: Duration.minutes(5), statistic: Stats.SUM }),
        atLeast: 5,
        periods: 2,
        silence: 'well',
        hurts: 'Whoever is signed in: screens say that the service did not answer.',
        todo: `See which function it is on the dashboard (${families.join(', ')}) and read its log for "request-failed"; the reference there is the one on the person's screen.`,
        page: 'api-failing.md',
      },
      PacketsFailing: {
        metric: new MathExpression({
          // A job that failed says so in its record and its log, and ends as a run that went well.
          expression: 'FILL(failed, 0) + FILL(crash, 0)',
          usingMetrics: {
            failed: loggedEvent(this, functions.packetJobs, 'packetFailed', 15),
            crash: errorsOf(functions.packetJobs, 15),
          },
          period: Duration.minutes(15),
        }),
        atLeast: 1,
        periods: 1,
        silence: 'well',
        hurts:
          'A clerk who ordered a claim packet: it was not built, and the screen may still say that it is being made.',
        todo: 'Ask for it again on the claim. If that fails too, read "packet-job-failed" in the log of "packetJobs": "causeName" says whether a store or the signing key was away.',
        page: 'api-failing.md',
      },
    };
  }

  private ofQueues({ functions, queues }: AlarmsProps): Record<string, Alarmed> {
    const page = 'queue-filled.md';
    const texts: Readonly<Record<FailureQueue, Pick<Alarmed, 'hurts' | 'todo'>>> = {
      ProjectFailures: {
        hurts:
          'Everyone who reads: a fact was taken and kept, and is shown nowhere. A hydrant that is out may be shown as in service.',
        todo: 'Run "npm run rebuild" against this deployment: it names what differs; with --write it repairs. Then empty the queue.',
      },
      PublishFailures: {
        hurts:
          'Readers of the public page: a change was not published when it was made. The next regular publication makes it good.',
        todo: 'If "PageNotPublished" rings as well, do what that one says. If not, nothing is missing: empty the queue.',
      },
      DispatchFailures: {
        hurts: 'Fire dispatch: a hydrant went out of service or came back, and no message was written.',
        todo: 'Telephone dispatch with the list of hydrants out of service from the public page. Then see the log of "dispatchSend" for "dispatch-message-not-made".',
      },
      DisplayFailures: {
        hurts: 'Clerks: a photo has arrived and has no copy to look at. The photo itself is safe.',
        todo: 'Nothing at once: a packet that needs the copy makes it. Read the log of "display" for which photo, and empty the queue.',
      },
    };
    const lag = (name: 'project' | 'dispatchSend', hurts: string): Alarmed => ({
      metric: behindOf(functions[name], 5),
      atLeast: 5 * 60_000,
      periods: 1,
      silence: 'well',
      hurts,
      todo: `Read the log of "${name}": a record that fails is tried again for hours and holds up those behind it.`,
      page,
    });
    return {
      ...Object.fromEntries(
        (Object.entries(queues) as [FailureQueue, IQueue][]).map(([name, queue]) => [
          name,
          { metric: laidAside(queue), atLeast: 1, periods: 1, silence: 'well', page, ...texts[name] },
        ]),
      ),
      ProjectorBehind: lag(
        'project',
        'Everyone who reads: what was handed in in the last minutes is not shown yet.',
      ),
      ...(queues.DispatchFailures
        ? {
            DispatchBehind: lag(
              'dispatchSend',
              'Fire dispatch: messages about hydrants out of service are five minutes late or more. Crews still telephone.',
            ),
          }
        : {}),
    };
  }

  private ofWhatGoesOut({ settings, functions }: AlarmsProps): Record<string, Alarmed> {
    const { digest, dispatchMessages } = settings.utility;
    const every = CHECKED_EVERY_MINUTES;
    const page = 'not-sent.md';
    const seen = (name: 'lateMessages' | 'lateLetters' | 'closedWays'): Metric =>
      loggedEvent(this, functions.outgoing, name, every);
    if (!digest && !dispatchMessages?.on) return {};
    const closedWays = seen('closedWays');
    return {
      ...(dispatchMessages?.on
        ? {
            DispatchNotTold: {
              metric: seen('lateMessages'),
              atLeast: 1,
              periods: 1,
              // That the looking itself stopped rings below.
              silence: 'well',
              hurts:
                'Fire dispatch: a message about a hydrant out of service (or back) has not gone out ten minutes after it was written, or was given up.',
              todo: 'Telephone dispatch now and record who took it on the strike’s page. The desk lists the messages; "send again now" tries anew.',
              page,
            },
          }
        : {}),
      ...(digest
        ? {
            LettersNotSent: {
              metric: seen('lateLetters'),
              atLeast: 1,
              periods: 1,
              silence: 'well',
              hurts:
                'Clerks and managers: a daily letter of deadlines did not reach them; a deadline may pass unseen.',
              todo: 'Tell them to look at "What is due" on the desk. Then read the log of "digest" for "letter-not-sent".',
              page,
            },
            LettersFailing: {
              metric: errorsOf(functions.digest, 60),
              atLeast: 1,
              periods: 2,
              silence: 'well',
              hurts: 'Clerks and managers: the daily letters of deadlines are not being written.',
              todo: 'Tell them to look at "What is due" on the desk. Then read the log of "digest".',
              page,
            },
          }
        : {}),
      CannotSend: {
        metric: closedWays,
        atLeast: 1,
        periods: 1,
        silence: 'well',
        hurts:
          'Whoever should get letters or messages: the account is still in a sending sandbox, or nobody has confirmed a sender’s address, so they get nothing.',
        todo: 'The field "closed" in the last line "outgoing-checked" says which; ask AWS to lift the sandbox, and follow the link that was mailed to the sender. This alarm rings until it is done.',
        page,
      },
      NobodyLooks: {
        metric: closedWays.with({ statistic: Stats.SAMPLE_COUNT }),
        below: true,
        atLeast: 1,
        periods: 3,
        silence: 'broken',
        hurts: 'Dispatch and clerks, without knowing it: whether their messages go out is not being checked.',
        todo: 'Read the log of "outgoing" for its last error.',
        page,
      },
    };
  }
}

/** How often it is looked at whether what should go out does. */
export const CHECKED_EVERY_MINUTES = 5;

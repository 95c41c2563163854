import { CfnOutput, Duration, Stack, type App, type StackProps } from 'aws-cdk-lib';
import { Rule, Schedule } from 'aws-cdk-lib/aws-events';
import { LambdaFunction } from 'aws-cdk-lib/aws-events-targets';
import { EventInvokeConfig, StartingPosition } from 'aws-cdk-lib/aws-lambda';
import { SqsDestination } from 'aws-cdk-lib/aws-lambda-destinations';
import { DynamoEventSource, SqsDlq } from 'aws-cdk-lib/aws-lambda-event-sources';
import { Queue, QueueEncryption } from 'aws-cdk-lib/aws-sqs';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { families, type Family } from '../../../shared/deployment/routes.ts';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';
import { COPY_PREFIX } from '../../../shared/evidence/displayCopy.ts';
import type { DataStack } from '../data/dataStack.ts';
import { asInstalled, besideBundle, programsOf } from '../bundling.ts';
import { permissions, type FunctionName, type Permission } from '../permissions.ts';
import type { DeploymentSettings } from '../settings.ts';
import { Api } from './api.ts';
import { BrowserClient } from './browserClient.ts';
import { DispatchMessages } from './dispatchMessages.ts';
import { Letters } from './letters.ts';
import { HouseFunction } from './houseFunction.ts';
import { Pages, prefixes } from './pages.ts';
import { everyRecord } from './everyRecord.ts';

export interface ServiceStackProps extends StackProps {
  readonly data: DataStack;
  readonly settings: DeploymentSettings;
  /** The repository's root. */
  readonly root: string;
  /** The folder of the handlers' entry files, `<name>/handler.ts` each. */
  readonly functionsFolder: string;
  /** The built site: `client/` for the browser, `server/` for the publisher. */
  readonly site: string;
  /** A module that sets the settings that are too large for Lambda's environment. */
  readonly inject: string;
}

/** Where Lambda unpacks a bundle and what lies beside it. */
const taskFolder = '/var/task';

const memoryMb: Readonly<Record<FunctionName, number>> = {
  submissions: 512,
  records: 1024,
  // Two threads with the solver, each with its own copy of the file, on a whole core.
  network: 2048,
  evidence: 512,
  packets: 2048,
  // Photos unpacked two at a time, and the archive with its originals whole.
  packetJobs: 3008,
  // A picture of fifty megapixels unpacked, twice over.
  display: 3008,
  health: 256,
  project: 1024,
  publish: 1769,
  calendar: 1024,
  digest: 1024,
  dispatch: 512,
  dispatchSend: 1024,
};

/** Everything that can be made anew from the data stack and this repository. */
export class ServiceStack extends Stack {
  readonly functions: Readonly<Record<FunctionName, HouseFunction>>;

  constructor(app: App, id: string, props: ServiceStackProps) {
    super(app, id, props);
    const { data, settings } = props;

    const pages = new Pages(this, 'Pages', {
      evidence: data.evidence,
      signInPage: data.people.domain.baseUrl(),
      assets: `${props.site}/client`,
      logDays: settings.logDays,
    });
    const siteUrl = `https://${pages.distribution.distributionDomainName}`;
    const browser = new BrowserClient(this, 'Browser', data.people, siteUrl, settings);
    const tokenIssuer = data.people.pool.userPoolProviderUrl;
    const tokenAudience = browser.client.userPoolClientId;

    const buckets = {
      evidence: data.evidence,
      inventory: data.inventory,
      network: data.network,
      published: pages.bucket,
    };
    const environment = {
      ...Object.fromEntries(
        (Object.keys(tables) as TableName[]).map((name) => [
          tables[name].environment,
          data.tables[name].tableName,
        ]),
      ),
      [environmentNames.evidenceUrl]: `s3://${buckets.evidence.bucketName}/`,
      [environmentNames.inventoryUrl]: `s3://${buckets.inventory.bucketName}/`,
      [environmentNames.networkUrl]: `s3://${buckets.network.bucketName}/`,
      [environmentNames.publishedUrl]: `s3://${buckets.published.bucketName}/${prefixes.pages}`,
      [environmentNames.tokenIssuer]: tokenIssuer,
      [environmentNames.tokenAudience]: tokenAudience,
    };
    const letters = new Letters(this, 'Letters', settings.utility);
    const messages = new DispatchMessages(this, 'DispatchMessages', settings.utility);
    const arnOf = (on: Permission['on']): string => {
      if ('table' in on) return data.tables[on.table].tableArn;
      if ('bucket' in on) return buckets[on.bucket].bucketArn;
      if ('identity' in on) return on.identity === 'sender' ? letters.senderArn : messages.senderArn;
      if ('topic' in on) return messages.topicArn;
      return 'key' in on ? data.packetKey.keyArn : packetJobs.fn.functionArn;
    };
    const make = (
      name: FunctionName,
      timeout: Duration,
      more: Readonly<Record<string, string>> = {},
    ): HouseFunction =>
      new HouseFunction(this, {
        name,
        entry: `${props.functionsFolder}/${name}/handler.ts`,
        root: props.root,
        inject: props.inject,
        environment: {
          ...environment,
          ...(name === 'publish' ? { [environmentNames.siteFolder]: `${taskFolder}/site` } : {}),
          ...more,
        },
        permissions: permissions[name],
        arnOf,
        programs: (programsOf[name] ?? []).map(({ from, as }) => ({ from: `${props.root}/${from}`, as })),
        beside: (besideBundle[name] ?? []).map(({ from, as }) => ({ from: `${props.root}/${from}`, as })),
        asInstalled: asInstalled[name] ?? [],
        memoryMb: memoryMb[name],
        timeout,
        logDays: settings.logDays,
        ...(name === 'publish' && settings.reserveConcurrency ? { reservedConcurrency: 1 } : {}),
      });
    const signing = { [environmentNames.packetKey]: data.packetKey.keyArn };
    const packetJobs = make('packetJobs', Duration.minutes(5), signing);
    // Asked again it would do no harm, but what failed by itself is the clerk's to see and to ask for.
    new EventInvokeConfig(this, 'PacketJobsOnce', {
      function: packetJobs.fn,
      retryAttempts: 0,
      maxEventAge: Duration.minutes(5),
    });
    const ofPackets = { ...signing, [environmentNames.packetJobsFunction]: packetJobs.fn.functionName };
    // The gateway gives up after 30 s, so a function that works longer works for nobody.
    const ofFamilies = Object.fromEntries(
      families.map((family) => [
        family,
        make(family, Duration.seconds(29), family === 'packets' ? ofPackets : {}),
      ]),
    ) as Record<Family, HouseFunction>;
    this.functions = {
      ...ofFamilies,
      packetJobs,
      display: make('display', Duration.seconds(90)),
      // Another inventory in force means every known hydrant anew.
      project: make('project', Duration.minutes(5)),
      publish: make('publish', Duration.minutes(2)),
      digest: make('digest', Duration.minutes(5), { [environmentNames.mail]: 'ses:' }),
      dispatchSend: make('dispatchSend', Duration.minutes(2), {
        [environmentNames.mail]: 'ses:',
        [environmentNames.texts]: messages.topicArn,
      }),
    };
    letters.sendDaily(this.functions.digest.fn);
    messages.wake(this.functions.dispatchSend.fn, data.tables.projections, () =>
      this.failures('DispatchFailures'),
    );

    const api = new Api(this, 'Api', {
      functions: Object.fromEntries(families.map((family) => [family, ofFamilies[family].fn])) as Record<
        Family,
        HouseFunction['fn']
      >,
      tokenIssuer,
      tokenAudience,
    });
    pages.addApi(api.api);
    this.follow(data, settings);
    this.showArrivals(data);

    new CfnOutput(this, 'siteAddress', { value: siteUrl });
    new CfnOutput(this, 'signInPage', { value: data.people.domain.baseUrl() });
    new CfnOutput(this, 'signInClientId', { value: tokenAudience });
  }

  /** Facts → projections → pages. What cannot be worked off ends in a queue, never in silence. */
  private follow(data: DataStack, { utility }: DeploymentSettings): void {
    const { project, publish } = this.functions;
    project.fn.addEventSource(
      new DynamoEventSource(data.tables.submissions, everyRecord(this.failures('ProjectFailures'))),
    );
    // The publisher reads the current state, not the change, so a hundred changes are one publishing.
    publish.fn.addEventSource(
      new DynamoEventSource(data.tables.projections, {
        startingPosition: StartingPosition.LATEST,
        batchSize: 1000,
        maxBatchingWindow: Duration.seconds(5),
        retryAttempts: 2,
        maxRecordAge: Duration.minutes(10),
        onFailure: new SqsDlq(this.failures('PublishFailures')),
      }),
    );
    new Rule(this, 'PublishAnyway', {
      description:
        'Publishes the public pages anew even when nothing changed, so that their age can be trusted.',
      schedule: Schedule.rate(Duration.minutes(utility.publishing.everyMinutes)),
      targets: [new LambdaFunction(publish.fn, { retryAttempts: 1, maxEventAge: Duration.minutes(5) })],
    });
  }

  /** An original arrives → its display copy. The copies themselves make no event for it. */
  private showArrivals(data: DataStack): void {
    const { fn } = this.functions.display;
    const failures = this.failures('DisplayFailures');
    new EventInvokeConfig(this, 'DisplayTries', {
      function: fn,
      retryAttempts: 2,
      maxEventAge: Duration.hours(6),
      onFailure: new SqsDestination(failures),
    });
    new Rule(this, 'Arrivals', {
      description: 'Makes the display copy of a photo that has arrived in the evidence store.',
      eventPattern: {
        source: ['aws.s3'],
        detailType: ['Object Created'],
        detail: {
          bucket: { name: [data.evidence.bucketName] },
          object: { key: [{ 'anything-but': { prefix: COPY_PREFIX } }] },
        },
      },
      targets: [
        new LambdaFunction(fn, {
          retryAttempts: 4,
          maxEventAge: Duration.hours(6),
          deadLetterQueue: failures,
        }),
      ],
    });
  }

  private failures(id: string): Queue {
    return new Queue(this, id, {
      encryption: QueueEncryption.SQS_MANAGED,
      enforceSSL: true,
      retentionPeriod: Duration.days(14),
    });
  }
}

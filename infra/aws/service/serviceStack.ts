import { Duration, Stack, type App, type StackProps } from 'aws-cdk-lib';
import { EventInvokeConfig } from 'aws-cdk-lib/aws-lambda';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { families, type Family } from '../../../shared/deployment/routes.ts';
import { tables, type TableName } from '../../../shared/deployment/tables.ts';
import { tileOrigin } from '../../../shared/public/mapTiles.ts';
import type { DataStack } from '../data/dataStack.ts';
import { asInstalled, besideBundle, programsOf } from '../bundling.ts';
import { HouseFunction } from '../house/houseFunction.ts';
import { memoryMb } from '../memory.ts';
import { permissions, type FunctionName, type Permission } from '../permissions.ts';
import type { DeploymentSettings } from '../settings.ts';
import { Alarms } from '../watch/alarms.ts';
import { watchPage } from '../watch/dashboard.ts';
import { Operators } from '../watch/operators.ts';
import { Api } from './api.ts';
import { BrowserClient } from './browserClient.ts';
import { DispatchMessages } from './dispatchMessages.ts';
import { Letters } from './letters.ts';
import { Pages, prefixes } from './pages.ts';
import { Following } from './following.ts';
import { sayWhatNext } from './sayWhatNext.ts';

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

/** Everything that can be made anew from the data stack and this repository. */
export class ServiceStack extends Stack {
  readonly functions: Readonly<Record<FunctionName, HouseFunction>>;

  constructor(app: App, id: string, props: ServiceStackProps) {
    super(app, id, props);
    const { data, settings } = props;

    const { mapTiles } = settings.utility.publishing;
    const pages = new Pages(this, 'Pages', {
      evidence: data.evidence,
      signInPage: data.people.domain.baseUrl(),
      streets: mapTiles ? tileOrigin(mapTiles) : null,
      assets: `${props.site}/client`,
      logDays: settings.logDays,
      domain: settings.domain,
    });
    const siteUrl = `https://${settings.domain?.name ?? pages.distribution.distributionDomainName}`;
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
      if ('account' in on) return '*';
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
    const more: Partial<Record<Family, Readonly<Record<string, string>>>> = {
      packets: ofPackets,
      // Tells the browser where to sign in.
      records: { [environmentNames.signInPage]: data.people.domain.baseUrl() },
    };
    // The gateway gives up after 30 s, so a function that works longer works for nobody.
    const ofFamilies = Object.fromEntries(
      families.map((family) => [family, make(family, Duration.seconds(29), more[family] ?? {})]),
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
      outgoing: make('outgoing', Duration.minutes(1)),
    };
    const following = new Following(this, data, this.functions);
    following.projectAndPublish(settings.utility.publishing.everyMinutes);
    following.showArrivals();
    following.lookAtOutgoing(settings.utility);
    letters.sendDaily(this.functions.digest.fn);
    messages.wake(this.functions.dispatchSend.fn, data.tables.projections, () =>
      following.failures('DispatchFailures'),
    );

    const api = new Api(this, 'Api', {
      functions: Object.fromEntries(families.map((family) => [family, ofFamilies[family].fn])) as Record<
        Family,
        HouseFunction['fn']
      >,
      tokenIssuer,
      tokenAudience,
      logDays: settings.logDays,
      throttle: settings.throttle,
    });
    pages.addApi(api.api);
    this.watch(settings, following, api, pages);
    sayWhatNext(this, { siteUrl, browser, data, pages, settings });
  }

  /** What rings, whom it tells, and one page to look at. */
  private watch(settings: DeploymentSettings, { queues }: Following, { api }: Api, pages: Pages): void {
    const { functions } = this;
    const { topic } = new Operators(this, 'Operators', settings);
    const alarms = new Alarms(this, 'Watch', { settings, functions, queues, api, tells: topic });
    watchPage(this, {
      alarms: alarms.all,
      functions,
      api,
      distributionId: pages.distribution.distributionId,
      utility: settings.utility.name,
      stage: settings.stage,
    });
  }
}

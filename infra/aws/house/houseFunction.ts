import { RemovalPolicy, type Duration, type Stack } from 'aws-cdk-lib';
import { PolicyStatement, Role, ServicePrincipal } from 'aws-cdk-lib/aws-iam';
import { Architecture, LoggingFormat, Runtime } from 'aws-cdk-lib/aws-lambda';
import { LogLevel, NodejsFunction, OutputFormat } from 'aws-cdk-lib/aws-lambda-nodejs';
import { LogGroup, type RetentionDays } from 'aws-cdk-lib/aws-logs';
import { Construct } from 'constructs';
import { handlerBundle, installedCommands, programCommand, type Beside } from '../bundling.ts';
import type { FunctionName, Permission } from '../permissions.ts';

export interface HouseFunctionProps {
  readonly name: FunctionName;
  /** The handler's file. */
  readonly entry: string;
  readonly root: string;
  /** A module that sets what is too large for Lambda's 4 KB of environment. */
  readonly inject: string;
  readonly environment: Readonly<Record<string, string>>;
  readonly permissions: readonly Permission[];
  /** The name of a resource as IAM writes it. */
  readonly arnOf: (on: Permission['on']) => string;
  /** Files that the bundle reads at run time, copied beside it: where from, and under which name. */
  readonly beside: readonly Beside[];
  /** Threads that it starts, bundled beside it: from which file, and under which name. */
  readonly programs: readonly Beside[];
  /** Packages with compiled parts: not bundled, but copied beside it as they are installed. */
  readonly asInstalled: readonly string[];
  readonly memoryMb: number;
  readonly timeout: Duration;
  readonly logDays: RetentionDays;
  readonly reservedConcurrency?: number;
}

/** A function with the house's defaults: Node 24 on arm64, one bundled ES module, its own log, no more rights than listed. */
export class HouseFunction extends Construct {
  readonly fn: NodejsFunction;
  readonly log: LogGroup;

  constructor(scope: Stack, props: HouseFunctionProps) {
    super(scope, `Function-${props.name}`);
    this.log = new LogGroup(this, 'Log', { retention: props.logDays, removalPolicy: RemovalPolicy.DESTROY });
    const role = new Role(this, 'Role', { assumedBy: new ServicePrincipal('lambda.amazonaws.com') });
    // Its own log and no other: the policy that AWS keeps for this would let it write to every log of the account.
    const writeLog = ['logs:CreateLogStream', 'logs:PutLogEvents'];
    role.addToPolicy(new PolicyStatement({ actions: writeLog, resources: [this.log.logGroupArn] }));
    for (const statement of props.permissions.flatMap((permission) => statements(permission, props.arnOf)))
      role.addToPolicy(statement);
    this.fn = new NodejsFunction(this, 'Handler', {
      role,
      entry: props.entry,
      projectRoot: props.root,
      depsLockFilePath: `${props.root}/package-lock.json`,
      runtime: Runtime.NODEJS_24_X,
      // Compiled parts come from the machine that deploys, which the handbook asks to be Linux on x86-64.
      architecture: props.asInstalled.length > 0 ? Architecture.X86_64 : Architecture.ARM_64,
      memorySize: props.memoryMb,
      timeout: props.timeout,
      environment: { ...props.environment, NODE_OPTIONS: '--enable-source-maps' },
      logGroup: this.log,
      // What Lambda itself says is then JSON as well, and the filters that count lines read every one of them.
      loggingFormat: LoggingFormat.JSON,
      bundling: {
        target: handlerBundle.target,
        format: OutputFormat.ESM,
        minify: handlerBundle.minify,
        sourceMap: handlerBundle.sourceMap,
        sourcesContent: handlerBundle.sourcesContent,
        mainFields: [...handlerBundle.mainFields],
        banner: handlerBundle.banner,
        inject: [props.inject],
        externalModules: [...props.asInstalled],
        // On the machine at hand, never in a container: a synth needs no Docker and no network.
        forceDockerBundling: false,
        logLevel: LogLevel.WARNING,
        commandHooks: {
          beforeInstall: () => [],
          beforeBundling: () => [],
          afterBundling: (_, output) => [
            ...props.beside.map(
              ({ from, as }) => `cp -R ${JSON.stringify(from)} ${JSON.stringify(`${output}/${as}`)}`,
            ),
            ...installedCommands(props.root, props.asInstalled, output),
            ...props.programs.map((program) => programCommand(props.root, program, output)),
          ],
        },
      },
      ...(props.reservedConcurrency === undefined
        ? {}
        : { reservedConcurrentExecutions: props.reservedConcurrency }),
    });
  }
}

/** A permission as IAM statements. Listing is a right on the bucket, limited to the prefix; the rest is on its objects. */
function statements({ actions, on }: Permission, arnOf: HouseFunctionProps['arnOf']): PolicyStatement[] {
  const arn = arnOf(on);
  if ('table' in on && on.partition !== undefined)
    return [
      new PolicyStatement({
        actions: [...actions],
        resources: [arn],
        // Of every row that a request touches (Amazon DynamoDB Developer Guide, "Using IAM policy conditions").
        conditions: { 'ForAllValues:StringEquals': { 'dynamodb:LeadingKeys': [on.partition] } },
      }),
    ];
  if (!('bucket' in on)) return [new PolicyStatement({ actions: [...actions], resources: [arn] })];
  const onObjects = actions.filter((action) => action !== 's3:ListBucket');
  const listing = new PolicyStatement({
    actions: ['s3:ListBucket'],
    resources: [arn],
    ...(on.prefix === '' ? {} : { conditions: { StringLike: { 's3:prefix': `${on.prefix}*` } } }),
  });
  return [
    new PolicyStatement({ actions: onObjects, resources: [`${arn}/${on.prefix}*`] }),
    ...(actions.includes('s3:ListBucket') ? [listing] : []),
  ];
}

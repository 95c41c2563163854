import * as z from 'zod';
import { environmentNames as names } from '../shared/deployment/environment.ts';
import { tables, type TableName } from '../shared/deployment/tables.ts';
import { utilitySettings, type UtilitySettings } from '../shared/utility/settings.ts';
import { OperatorFault } from './log/wordless.ts';

/** The environment of a handler, read and checked once at start. */
export interface Environment {
  readonly utility: UtilitySettings;
  readonly tableNames: Readonly<Record<TableName, string>>;
  readonly dynamodbEndpoint: string | null;
  readonly evidenceUrl: string;
  readonly publishedUrl: string;
  readonly inventoryUrl: string;
  readonly networkUrl: string;
  readonly tokenIssuer: string;
  readonly tokenAudience: string;
  readonly tokenKeysUrl: string;
  /** Where a file-backed evidence store's signed links point, and what signs them; null with S3, which signs its own. */
  readonly evidenceLinks: { readonly base: string; readonly secret: string } | null;
  /** The base of the page where people sign in; null: they are given links. */
  readonly signInPage: string | null;
  /** What signs packets; null for handlers that sign none. */
  readonly packetKey: string | null;
  /** The function that builds packets; null: in this process. */
  readonly packetJobsFunction: string | null;
  /** What sends letters; null for handlers that send none. */
  readonly mailUrl: string | null;
  /** What sends text messages; null for handlers that send none. */
  readonly textsUrl: string | null;
}

/** A variable is missing or wrong. The message names each, and never its value. */
export class EnvironmentRefused extends OperatorFault {
  override readonly name = 'EnvironmentRefused';
}

type Variables = Readonly<Record<string, string | undefined>>;

const objectUrl = z.string().regex(/^(s3|file):\/\/\S+$/, { error: 'is not an s3:// or file:// URL' });
const settingsJson = z.string().transform((text, ctx): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    ctx.addIssue({ code: 'custom', message: 'is not JSON' });
    return z.NEVER;
  }
});

const tableVariables = Object.fromEntries(
  Object.values(tables).map(({ environment }) => [environment, z.string().min(1)]),
);

const variables = z.object({
  ...tableVariables,
  [names.utility]: settingsJson.pipe(utilitySettings),
  [names.dynamodbEndpoint]: z.url().optional(),
  [names.evidenceUrl]: objectUrl,
  [names.publishedUrl]: objectUrl,
  [names.inventoryUrl]: objectUrl,
  [names.networkUrl]: objectUrl,
  [names.tokenIssuer]: z.url(),
  [names.tokenAudience]: z.string().min(1),
  [names.tokenKeysUrl]: z.url().optional(),
  /** A path is enough: the links are then on whatever host the page came from. */
  [names.evidenceLinkBase]: z
    .string()
    .regex(/^(https?:\/\/\S+|\/\S*)$/, { error: 'is neither a URL nor a path' })
    .optional(),
  [names.evidenceLinkSecret]: z.string().min(32).optional(),
  [names.signInPage]: z.url().optional(),
  [names.packetKey]: z
    .string()
    .regex(/^(file:\/\/\/|arn:aws[\w-]*:kms:)\S+$/, {
      error: 'is neither a file:// URL nor the ARN of a KMS key',
    })
    .optional(),
  [names.packetJobsFunction]: z.string().min(1).optional(),
  [names.mail]: z
    .string()
    .regex(/^(file:\/\/\/\S+|ses:)$/, { error: 'is neither a file:// URL nor ses:' })
    .optional(),
  [names.texts]: z
    .string()
    .regex(/^(file:\/\/\/|arn:aws[\w-]*:sns:)\S+$/, {
      error: 'is neither a file:// URL nor the ARN of an SNS topic',
    })
    .optional(),
});

/**
 * Reads a handler's environment. Throws `EnvironmentRefused` naming every variable that is missing or wrong. Deployed
 * code (Lambda sets `AWS_LAMBDA_FUNCTION_NAME`) also refuses a development issuer: any whose tokens or keys do not
 * come over https from another machine.
 */
export function readEnvironment(given: Variables): Environment {
  // An empty value is how a deployment leaves a variable out.
  const set = Object.fromEntries(
    Object.entries(given).filter(([, value]) => value !== undefined && value !== ''),
  );
  const parsed = variables.safeParse(set);
  if (!parsed.success) throw new EnvironmentRefused(parsed.error.issues.map(describe).join('; '));
  const read = parsed.data;
  const text = (name: string): string => read[name as keyof typeof read] as string;
  const optional = (name: string): string | null =>
    (read[name as keyof typeof read] as string | undefined) ?? null;

  const tokenIssuer = text(names.tokenIssuer);
  const tokenKeysUrl = optional(names.tokenKeysUrl) ?? `${tokenIssuer}/.well-known/jwks.json`;
  if (set['AWS_LAMBDA_FUNCTION_NAME'] !== undefined)
    for (const [name, value] of [
      [names.tokenIssuer, tokenIssuer],
      [names.tokenKeysUrl, tokenKeysUrl],
    ] as const)
      if (!isPublicIssuer(value))
        throw new EnvironmentRefused(`${name} is a development issuer, which deployed code does not trust`);

  const base = optional(names.evidenceLinkBase);
  const secret = optional(names.evidenceLinkSecret);
  const evidenceUrl = text(names.evidenceUrl);
  if (evidenceUrl.startsWith('file:') && (base === null || secret === null))
    throw new EnvironmentRefused(
      `${names.evidenceLinkBase} and ${names.evidenceLinkSecret} are needed beside a file:// ${names.evidenceUrl}`,
    );

  return {
    utility: read[names.utility],
    tableNames: Object.fromEntries(
      Object.entries(tables).map(([table, { environment }]) => [table, text(environment)]),
    ) as Record<TableName, string>,
    dynamodbEndpoint: optional(names.dynamodbEndpoint),
    evidenceUrl,
    publishedUrl: text(names.publishedUrl),
    inventoryUrl: text(names.inventoryUrl),
    networkUrl: text(names.networkUrl),
    tokenIssuer,
    tokenAudience: text(names.tokenAudience),
    tokenKeysUrl,
    evidenceLinks: base === null || secret === null ? null : { base, secret },
    signInPage: optional(names.signInPage),
    packetKey: optional(names.packetKey),
    packetJobsFunction: optional(names.packetJobsFunction),
    mailUrl: optional(names.mail),
    textsUrl: optional(names.texts),
  };
}

function describe(issue: z.core.$ZodIssue): string {
  const [name, ...inside] = issue.path.map(String);
  if (issue.code === 'invalid_type' && inside.length === 0) return `${name ?? ''} is missing`;
  return `${[name, ...inside].join('.')} ${issue.code === 'custom' ? issue.message : 'is not valid'}`;
}

function isPublicIssuer(address: string): boolean {
  const { protocol, hostname } = new URL(address);
  return (
    protocol === 'https:' &&
    !/^(localhost|.*\.localhost|.*\.invalid|.*\.local|127\..*|0\.0\.0\.0|\[::1?\])$/.test(hostname)
  );
}

import { readFileSync } from 'node:fs';
import { RetentionDays } from 'aws-cdk-lib/aws-logs';
import * as z from 'zod';
import { problemIssue, problemsFromZod } from '../../shared/problems/fromZod.ts';
import { sayProblem } from '../../shared/words/index.ts';
import { throttleSettings } from './service/throttles.ts';
import { utilitySettings } from '../../shared/utility/settings.ts';

/**
 * What one deployment is told (`docs/operations/settings.md` says what each field does; `settings.example.json` has those that most need).
 * `utility` is the same object that the handlers read.
 */
export const deploymentSettings = z
  .strictObject({
    /** Part of every stack's name, so that two stages live side by side in one account. */
    stage: z.string().regex(/^[a-z][a-z0-9]{0,11}$/, { error: 'stage-name' }),
    utility: utilitySettings,
    evidence: z.strictObject({
      /** For this long nobody can delete or replace a photo or packet, days (Object Lock, governance mode). */
      lockedDays: z.number().int().min(1).max(36_500),
    }),
    signIn: z.strictObject({
      /** The sign-in page stands at `https://<this>.auth.<region>.amazoncognito.com`; unique in the region. */
      domainPrefix: z.string().regex(/^[a-z][a-z0-9-]{2,50}[a-z0-9]$/, { error: 'domain-prefix' }),
      /** A shift, hours: after this a person signs in again. */
      rememberHours: z.number().int().min(1).max(720),
      /** Whether everybody needs a code from an app beside the password. Required, there are no passkeys. */
      secondFactor: z.enum(['optional', 'required']).default('optional'),
    }),
    /** The person who lets the others in; is mailed a password for once. Null once there is one. */
    firstManager: z
      .strictObject({ email: z.email(), name: z.string().trim().min(1).max(80) })
      .nullable()
      .default(null),
    /** Who is told when something is wrong, and the sum a month at which they are told of cost. */
    operators: z.strictObject({
      emails: z.array(z.email()).min(1).max(10),
      monthlyBudgetUsd: z.number().int().min(1).max(100_000),
    }),
    /** The utility's own name for the address. Null: the name that CloudFront gives. */
    domain: z
      .strictObject({
        name: z
          .string()
          .regex(/^(?:[a-z0-9](?:[a-z0-9-]{0,61}[a-z0-9])?\.)+[a-z]{2,}$/, { error: 'host-name' }),
        /** A certificate of AWS Certificate Manager in us-east-1, whatever the region of the rest. */
        certificateArn: z
          .string()
          .regex(/^arn:aws:acm:us-east-1:\d{12}:certificate\/[0-9a-f-]+$/, { error: 'certificate-arn' }),
        /** A hosted zone of Route 53 in this account, where the name is then entered. Null: somebody else enters it. */
        hostedZone: z
          .strictObject({
            id: z.string().regex(/^Z[A-Z0-9]+$/, { error: 'hosted-zone-id' }),
            name: z.string().min(3).max(255),
          })
          .nullable(),
      })
      .nullable()
      .default(null),
    /**
     * Keeps one execution for the publisher and no more. False in an account whose quota is still the new account's 10,
     * which lets nothing be kept back; pages stay right either way, because an older page never replaces a newer.
     */
    reserveConcurrency: z.boolean(),
    /** How many requests the gateway lets through; more is answered 429, and phones wait. */
    throttle: throttleSettings,
    /** Days that logs are kept; one of the numbers that CloudWatch knows (1, 3, 5, 7, 14, 30, 60, 90 …). */
    logDays: z.enum(RetentionDays),
  })
  // A page that may not outlive one publication that failed would tell readers half the time not to rely on it, and the
  // alarm could not ring before.
  .superRefine(({ utility: { publishing } }, context) => {
    const least = 2 * publishing.everyMinutes + 1;
    if (publishing.relyForMinutes < least)
      context.addIssue(
        problemIssue('rely-too-short', ['utility', 'publishing', 'relyForMinutes'], { least }),
      );
  })
  // Letters, calendars and the sign-in name the address; two that differ would lead people astray.
  .superRefine(({ domain, utility: { publicUrl } }, context) => {
    if (domain === null || publicUrl?.replace(/\/$/, '') === `https://${domain.name}`) return;
    context.addIssue(
      problemIssue('public-url-not-domain', ['utility', 'publicUrl'], { url: `https://${domain.name}/` }),
    );
  });
export type DeploymentSettings = z.infer<typeof deploymentSettings>;

/** The settings file is missing or wrong; the message names every field and what would be right. */
export class SettingsRefused extends Error {
  override readonly name = 'SettingsRefused';
}

/** Reads and checks a settings file. Throws `SettingsRefused` with every problem at once. */
export function readDeploymentSettings(file: string): DeploymentSettings {
  let text: string;
  try {
    text = readFileSync(file, 'utf8');
  } catch {
    throw new SettingsRefused(
      `${file} cannot be read. Copy infra/aws/settings.example.json to it and fill it in, or name another with -c settings=FILE.`,
    );
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new SettingsRefused(`${file} is not JSON: ${(error as Error).message}`);
  }
  const parsed = deploymentSettings.safeParse(json, { reportInput: true });
  if (parsed.success) return parsed.data;
  const lines = problemsFromZod(parsed.error.issues).map(
    (problem) => `  ${problem.path || '(the whole)'}: ${sayProblem('en', problem)}`,
  );
  throw new SettingsRefused(`${file} is not usable:\n${lines.join('\n')}`);
}

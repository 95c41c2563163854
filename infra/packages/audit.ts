import * as z from 'zod';
import { LONGEST_EXCEPTION_DAYS, type AuditException } from './exceptions.ts';

const severities = ['info', 'low', 'moderate', 'high', 'critical'] as const;
type Severity = (typeof severities)[number];

/** What of npm's audit report (version 2, `npm audit --json`) is read. */
const auditReport = z.object({
  auditReportVersion: z.literal(2),
  vulnerabilities: z.record(
    z.string(),
    z.object({
      /** An advisory, or the name of another package of this report through which it comes. */
      via: z.array(
        z.union([
          z.string(),
          z.object({
            name: z.string(),
            title: z.string(),
            url: z.string(),
            severity: z.enum(severities),
            range: z.string(),
          }),
        ]),
      ),
      /** Where it is installed: keys of the lock file. */
      nodes: z.array(z.string()),
    }),
  ),
});
export type AuditReport = z.output<typeof auditReport>;

/** A report, or null for any other answer: a registry that cannot be asked answers JSON too. */
export function readAuditReport(text: string): AuditReport | null {
  try {
    return auditReport.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

export interface Finding {
  readonly package: string;
  readonly advisory: string;
  readonly title: string;
  readonly severity: Severity;
  /** Versions that have it. */
  readonly range: string;
  /** Installed for what runs, and not only to build or test. */
  readonly production: boolean;
}

export interface AuditVerdict {
  /** What makes it fail, a sentence each. */
  readonly failures: readonly string[];
  /** What is known and does not: excepted, too slight, or only in tools. */
  readonly noted: readonly string[];
}

/** Which keys of a lock file are installed only for development. */
export type IsDevelopment = (lockKey: string) => boolean;

/**
 * Holds a report against the exceptions. A finding of moderate severity or worse in a package that runs fails unless an
 * exception names it and has not ended; so does an exception that names nothing any more, that is longer than
 * `LONGEST_EXCEPTION_DAYS`, or that gives no reason. `today` is `YYYY-MM-DD`.
 */
export function judgeAudit(
  report: AuditReport,
  exceptions: readonly AuditException[],
  today: string,
  isDevelopment: IsDevelopment,
): AuditVerdict {
  const failures = exceptions.flatMap((exception) => doubtsOf(exception));
  const noted: string[] = [];
  const used = new Set<AuditException>();
  for (const finding of findingsOf(report, isDevelopment)) {
    const says = `${finding.package} ${finding.range}: ${finding.title} (${finding.severity}, ${finding.advisory})`;
    const exception = exceptions.find(
      (one) => one.advisory === finding.advisory && one.package === finding.package,
    );
    if (exception) used.add(exception);
    const grave =
      finding.production && severities.indexOf(finding.severity) >= severities.indexOf('moderate');
    if (!grave) noted.push(`${says}: ${finding.production ? 'slight' : 'in tools only'}`);
    else if (exception && today <= exception.until)
      noted.push(`${says}: excepted until ${exception.until}: ${exception.reason}`);
    else if (exception) failures.push(`${says}: its exception ended on ${exception.until}`);
    else failures.push(`${says}: nothing explains it; upgrade, or name it in exceptions.ts with a reason`);
  }
  for (const exception of exceptions)
    if (!used.has(exception))
      failures.push(
        `the exception of ${exception.package} (${exception.advisory}) names nothing that is found: take it out`,
      );
  return { failures, noted };
}

function doubtsOf({ package: name, advisory, reason, since, until }: AuditException): string[] {
  const days = (Date.parse(until) - Date.parse(since)) / 86_400_000;
  const which = `the exception of ${name} (${advisory})`;
  return [
    ...(reason.trim().length < 20 ? [`${which} gives no reason`] : []),
    ...(days >= 0 && days <= LONGEST_EXCEPTION_DAYS
      ? []
      : [`${which} must end at most ${LONGEST_EXCEPTION_DAYS} days after it began`]),
  ];
}

/** Every advisory once, by the package that has it. What only depends on that package is repaired with it. */
function findingsOf(report: AuditReport, isDevelopment: IsDevelopment): readonly Finding[] {
  const entries = Object.entries(report.vulnerabilities);
  return entries.flatMap(([name, { via, nodes }]) =>
    via.flatMap((one) =>
      typeof one === 'string'
        ? []
        : [
            {
              package: name,
              advisory: one.url,
              title: one.title,
              severity: one.severity,
              range: one.range,
              production: !nodes.every(isDevelopment),
            },
          ],
    ),
  );
}

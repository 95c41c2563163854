import { judgeAudit, readAuditReport } from '../../packages/audit.ts';
import { auditExceptions } from '../../packages/exceptions.ts';
import { readLock } from '../../packages/lockFile.ts';
import { npm } from '../../packages/npm.ts';
import { COULD_NOT_ASK } from '../testing/step.ts';

/**
 * `npm run audit`: asks the registry for known weaknesses of what is installed and holds the answer against
 * `infra/packages/exceptions.ts`. Exit 0 nothing unexplained, 1 something, 75 the registry could not be asked.
 */
const LIMIT_MS = 90_000;
const said = await npm(['audit', '--json', '--fetch-retries=1', '--fetch-timeout=20000'], LIMIT_MS);
const report = said === null ? null : readAuditReport(said);
if (report === null) {
  console.log('skipped: no network, or a registry that answers no audit; nothing is known of the packages');
  process.exitCode = COULD_NOT_ASK;
} else {
  const lock = await readLock();
  const today = new Date().toISOString().slice(0, 10);
  const isDevelopment = (key: string): boolean => lock.get(key)?.dev === true;
  const { failures, noted } = judgeAudit(report, auditExceptions, today, isDevelopment);
  for (const one of noted) console.log(`noted: ${one}`);
  for (const one of failures) console.log(`FAILS: ${one}`);
  if (failures.length === 0) console.log('nothing unexplained in what runs');
  process.exitCode = failures.length > 0 ? 1 : 0;
}

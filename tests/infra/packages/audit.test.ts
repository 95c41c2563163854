import { execFile } from 'node:child_process';
import { createServer, type Server } from 'node:http';
import { mkdtemp, rm } from 'node:fs/promises';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { judgeAudit, readAuditReport, type AuditReport } from '../../../infra/packages/audit.ts';
import {
  auditExceptions,
  LONGEST_EXCEPTION_DAYS,
  type AuditException,
} from '../../../infra/packages/exceptions.ts';
import { packageAt } from '../../../infra/packages/lockFile.ts';
import { COULD_NOT_ASK } from '../../../infra/local/testing/step.ts';

const advisory = 'https://github.com/advisories/GHSA-0000-0000-0000';

/** A report as npm writes it (`AuditReport.toJSON` and `Vuln.toJSON` of @npmcli/arborist): one advisory, and what depends on it. */
const reportOf = (severity: string, nodes = ['node_modules/leftish']): AuditReport =>
  readAuditReport(
    JSON.stringify({
      auditReportVersion: 2,
      vulnerabilities: {
        leftish: {
          name: 'leftish',
          severity,
          isDirect: false,
          via: [
            {
              source: 1,
              name: 'leftish',
              dependency: 'leftish',
              title: 'It pads too far',
              url: advisory,
              severity,
              cwe: ['CWE-400'],
              cvss: { score: 7.5, vectorString: null },
              range: '<1.2.3',
            },
          ],
          effects: ['padder'],
          range: '<1.2.3',
          nodes,
          fixAvailable: true,
        },
        padder: {
          name: 'padder',
          severity,
          isDirect: true,
          via: ['leftish'],
          effects: [],
          range: '*',
          nodes: ['node_modules/padder'],
          fixAvailable: true,
        },
      },
      metadata: {},
    }),
  )!;
const exception = (more: Partial<AuditException> = {}): AuditException => ({
  advisory,
  package: 'leftish',
  reason: 'We never pad what a stranger sends.',
  since: '2026-11-01',
  until: '2026-12-31',
  ...more,
});
const judged = (
  report: AuditReport,
  exceptions: readonly AuditException[] = [],
  today = '2026-11-26',
  isDevelopment = (_key: string) => false,
) => judgeAudit(report, exceptions, today, isDevelopment);

describe('what an audit found', () => {
  it.each([
    ['low', 0],
    ['moderate', 1],
    ['high', 1],
    ['critical', 1],
  ])(
    '%s and unexplained: %d failures, said once and not again for what depends on it',
    (severity, failures) => {
      const verdict = judged(reportOf(severity));
      expect(verdict.failures).toHaveLength(failures);
      expect(verdict.noted).toHaveLength(1 - failures);
      expect([...verdict.failures, ...verdict.noted][0]).toContain(advisory);
    },
  );

  it('only notes what is installed to build and test alone', () => {
    const isDevelopment = (key: string): boolean => key === 'node_modules/leftish';
    expect(judged(reportOf('critical'), [], '2026-11-26', isDevelopment)).toEqual({
      failures: [],
      noted: [expect.stringContaining('in tools only')],
    });
    const twice = reportOf('critical', ['node_modules/leftish', 'node_modules/padder/node_modules/leftish']);
    expect(judged(twice, [], '2026-11-26', isDevelopment).failures).toHaveLength(1);
  });

  it('an exception holds to its last day and not longer', () => {
    expect(judged(reportOf('high'), [exception()], '2026-12-31').failures).toEqual([]);
    expect(judged(reportOf('high'), [exception()], '2027-01-01').failures).toEqual([
      expect.stringContaining('ended on 2026-12-31'),
    ]);
  });

  it('an exception is of one advisory in one package', () => {
    const other = exception({ advisory: 'https://github.com/advisories/GHSA-1111-1111-1111' });
    expect(judged(reportOf('high'), [other]).failures).toEqual([
      expect.stringContaining('nothing explains it'),
      expect.stringContaining('names nothing that is found'),
    ]);
    expect(judged(reportOf('high'), [exception({ package: 'padder' })]).failures).toHaveLength(2);
  });

  it('an exception gives a reason, and an end within half a year', () => {
    const doubts = (more: Partial<AuditException>) => judged(reportOf('high'), [exception(more)]).failures;
    expect(doubts({ reason: 'fine' })).toEqual([expect.stringContaining('no reason')]);
    expect(doubts({ until: '2028-01-01' })).toEqual([
      expect.stringContaining(`${LONGEST_EXCEPTION_DAYS} days`),
    ]);
    expect(doubts({ until: 'some day' })).not.toEqual([]);
  });

  it('those that stand here are in order', () => {
    const today = new Date().toISOString().slice(0, 10);
    const nothing = readAuditReport('{"auditReportVersion":2,"vulnerabilities":{}}')!;
    const failures = judged(nothing, auditExceptions, today).failures;
    // Whether each is still found is asked where there is a registry.
    expect(failures.filter((one) => !one.includes('names nothing that is found'))).toEqual([]);
  });
});

describe('an answer that is no report', () => {
  it.each([
    ['', 'nothing'],
    ['not JSON', 'no JSON'],
    ['{"message":"405 Method Not Allowed","statusCode":405,"error":{"summary":""}}', 'a refusal'],
    ['{"auditReportVersion":3,"vulnerabilities":{}}', 'a version that we do not know'],
    ['{"auditReportVersion":2}', 'a report without its findings'],
  ])('%s', (text) => {
    expect(readAuditReport(text)).toBeNull();
  });
});

describe('where a package lies', () => {
  it.each([
    ['node_modules/zod', 'zod'],
    ['node_modules/@aws-sdk/client-s3/node_modules/@smithy/x', '@smithy/x'],
    ['node_modules/pdfkit/js/pdfkit.js', 'pdfkit'],
    ['shared/roles.ts', null],
  ])('%s', (path, name) => {
    expect(packageAt(path)).toBe(name);
  });
});

describe('the command, with the real npm and a registry of this machine', () => {
  let cache: string;
  beforeAll(async () => {
    cache = await mkdtemp(join(tmpdir(), 'audit-'));
  });
  afterAll(() => rm(cache, { recursive: true, force: true }));
  let server: Server | undefined;
  afterEach(() => server?.close());

  /** As the registry answers `POST /-/npm/v1/security/advisories/bulk`: advisories by package. */
  async function auditWith(status: number, advisories: object): Promise<{ code: unknown; stdout: string }> {
    server = createServer((request, response) => {
      const bulk = request.url?.endsWith('/security/advisories/bulk') === true;
      response.writeHead(bulk ? status : 404, { 'content-type': 'application/json' });
      response.end(JSON.stringify(bulk ? advisories : {}));
    });
    await new Promise<void>((resolve) => server!.listen(0, '127.0.0.1', resolve));
    const registry = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
    const file = join(import.meta.dirname, '../../../infra/local/commands/audit.ts');
    return new Promise((resolve) => {
      const env = {
        ...process.env,
        npm_config_registry: registry,
        npm_config_cache: cache,
      };
      execFile(process.execPath, [file], { env }, (error, stdout) =>
        resolve({ code: error?.code ?? 0, stdout }),
      );
    });
  }
  const inZod = {
    zod: [
      {
        id: 1,
        url: advisory,
        title: 'Invented for this test',
        severity: 'high',
        vulnerable_versions: '>=4.0.0',
        cwe: [],
        cvss: { score: 7, vectorString: null },
      },
    ],
  };

  it('passes when nothing is known', async () => {
    expect(await auditWith(200, {})).toEqual({ code: 0, stdout: 'nothing unexplained in what runs\n' });
  }, 60_000);

  it('fails on what nothing explains', async () => {
    const { code, stdout } = await auditWith(200, inZod);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^FAILS: zod .*Invented for this test \(high,/m);
  }, 60_000);

  it('says that it could not ask, and never that all is well', async () => {
    const { code, stdout } = await auditWith(405, {});
    expect(code).toBe(COULD_NOT_ASK);
    expect(stdout).toMatch(/^skipped: no network/);
  }, 90_000);
});

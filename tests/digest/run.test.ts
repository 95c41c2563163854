import { execFile } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { NotSent, type MailSender } from '../../functions/stores/mail/mailSender.ts';
import { runDigest, type DigestReport } from '../../functions/digest/run.ts';
import { undeliveredLetters } from '../../functions/digest/undelivered.ts';
import { memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { startDynamodb } from '../../infra/local/dynamodb.ts';
import { CLAIM_MS, MOST_TRIES, type Mail } from '../../shared/digest/outbox.ts';
import { demanded, digestDeps, record } from '../support/digestWorld.ts';
import { storesOnDynalite } from '../support/stores.ts';

/** Noon in New York on 22 April 2026: the demo's follow-up, 21 days after the demand of 1 April, is due. */
const noon = Date.parse('2026-04-22T16:00:00Z');
const minutes = 60_000;

function post(fails: (attempt: number) => boolean = () => false) {
  const mails: Mail[] = [];
  let attempt = 0;
  const sender: MailSender = {
    send: async (mail) => {
      if (fails(attempt++)) throw new NotSent('mail-service-away');
      mails.push(mail);
      return `m-${mails.length}`;
    },
  };
  return { mails, sender };
}

describe('the daily letter', () => {
  it('says what is due to each person of the settings, once a day', async () => {
    const { mails, sender } = post();
    const stores = memoryStores();
    await record(stores, demanded);
    let ms = noon;
    const deps = digestDeps(stores, sender, () => new Date(ms));
    expect(await runDigest(deps)).toEqual({ written: 2, sent: 2, failed: 0, dead: 0 });
    expect(mails.map(({ to }) => to).sort()).toEqual(demoUtility.digest!.to.map(({ email }) => email).sort());
    expect(mails[0]!.subject).toBe('Tansy Harbor Water Department, Apr 22, 2026: 1 overdue, 1 due today');
    // The insurer's target of 15 days was missed on 16 April; the utility's own follow-up is due.
    expect(mails[0]!.text).toMatch(
      /Overdue\nApr 16, 2026 {2}2026-0007 {2}Acknowledgment by the payer\n.*Target set for insurers by Example insurance rule 10\(a\)/,
    );
    expect(mails[0]!.text).toMatch(/Due today\nApr 22, 2026 {2}2026-0007 {2}Follow up/);
    expect(mails[0]!.text).toContain('Not legal advice.');
    for (let hour = 1; hour <= 5; hour += 1) {
      ms = noon + hour * 60 * minutes;
      expect(await runDigest(deps)).toEqual({ written: 0, sent: 0, failed: 0, dead: 0 });
    }
    ms = noon + 24 * 60 * minutes;
    expect((await runDigest(deps)).sent).toBe(2);
    expect(mails).toHaveLength(4);
  });

  it('knows nothing of a driver or an adjuster', async () => {
    const { mails, sender } = post();
    const stores = memoryStores();
    await record(stores, demanded);
    await runDigest(digestDeps(stores, sender, () => new Date(noon)));
    expect(JSON.stringify(mails)).not.toMatch(/Ann Example|A caller|555-0100/);
  });

  it('warns of the date to sue from far off, and stays with it', async () => {
    const stores = memoryStores();
    await record(stores, demanded);
    // Struck on 3 March 2026 in New York; the demo's example rule says three years, back from a Saturday to the Friday.
    for (const [day, part] of [
      ['2028-03-01', null],
      ['2028-03-03', 'Last days to sue'],
      ['2029-03-02', 'Due today'],
      ['2030-01-01', 'Overdue'],
    ] as const) {
      const { mails, sender } = post();
      await runDigest(digestDeps(stores, sender, () => new Date(`${day}T17:00:00Z`)));
      const text = mails[0]!.text;
      if (part === null) expect(text).not.toContain('Last day to sue');
      else expect(text.slice(text.indexOf(part))).toMatch(/Mar 2, 2029 {2}2026-0007 {2}Last day to sue/);
    }
  });

  it('a day on which nothing is due says so, unless the settings want none', async () => {
    const quiet = post();
    const stores = memoryStores();
    await runDigest(digestDeps(stores, quiet.sender, () => new Date(noon)));
    expect(quiet.mails[0]?.text).toContain('Nothing is overdue, and nothing is due within a week.');
    const none = post();
    const digest = { ...demoUtility.digest!, whenNothing: 'skip' as const };
    expect(
      await runDigest(digestDeps(memoryStores(), none.sender, () => new Date(noon), { digest })),
    ).toMatchObject({
      written: 0,
    });
  });

  it('says which clocks nobody set', async () => {
    const { mails, sender } = post();
    const settings = { ...demoUtility.clocks!, rules: [] };
    await runDigest(digestDeps(memoryStores(), sender, () => new Date(noon), { clocks: settings }));
    expect(mails[0]?.text).toContain('No last day to sue is set, so none is warned of.');
  });

  it('is in the language of the person', async () => {
    const { mails, sender } = post();
    const digest = { ...demoUtility.digest!, to: [{ ...demoUtility.digest!.to[0]!, locale: 'es' as const }] };
    await runDigest(digestDeps(memoryStores(), sender, () => new Date(noon), { digest }));
    expect(mails[0]?.text).toContain('Nada está vencido');
  });

  it('is of the utility’s day: past midnight in London it is still yesterday here', async () => {
    const { mails, sender } = post();
    await runDigest(digestDeps(memoryStores(), sender, () => new Date('2026-04-23T03:00:00Z')));
    expect(mails[0]?.subject).toContain('Apr 22, 2026');
  });
});

describe('a mail service that fails', () => {
  it('loses nothing: what it did not take goes later', async () => {
    const { mails, sender } = post((attempt) => attempt < 3);
    let ms = noon;
    const deps = digestDeps(memoryStores(), sender, () => new Date(ms));
    expect(await runDigest(deps)).toEqual({ written: 2, sent: 0, failed: 2, dead: 0 });
    expect(await undeliveredLetters(deps.outbox, '2026-04-22')).toEqual([
      { day: '2026-04-22', personId: 'c-301', state: 'failed', tries: 1, why: 'mail-service-away' },
      { day: '2026-04-22', personId: 'm-401', state: 'failed', tries: 1, why: 'mail-service-away' },
    ]);
    for (let hour = 1; hour <= 3; hour += 1) {
      ms = noon + hour * 60 * minutes;
      await runDigest(deps);
    }
    expect(mails.map(({ to }) => to).sort()).toEqual(demoUtility.digest!.to.map(({ email }) => email).sort());
    expect(await undeliveredLetters(deps.outbox, '2026-04-22')).toEqual([]);
  });

  it(`is given up after ${MOST_TRIES} tries, said on the desk and in the next letter, and logged without an address`, async () => {
    let fails = true;
    const { mails, sender } = post(() => fails);
    let ms = noon;
    const deps = digestDeps(memoryStores(), sender, () => new Date(ms));
    for (let hour = 0; hour < 8; hour += 1) {
      ms = noon + hour * 60 * minutes;
      await runDigest(deps);
    }
    const dead = await undeliveredLetters(deps.outbox, '2026-04-22');
    expect(dead.map(({ state, tries }) => [state, tries])).toEqual([
      ['dead', MOST_TRIES],
      ['dead', MOST_TRIES],
    ]);
    expect(JSON.stringify(deps.logged)).not.toContain('@');
    expect(deps.logged.filter(({ level }) => level === 'error')).toHaveLength(2);
    fails = false;
    ms = noon + 24 * 60 * minutes;
    await runDigest(deps);
    expect(mails).toHaveLength(2);
    expect(mails[0]?.text).toContain('2 earlier letters could not be delivered');
  });
});

describe('runs at once, on the real API', () => {
  it('ten at a time send each letter once', async () => {
    const { mails, sender } = post();
    const { stores, close } = await storesOnDynalite();
    try {
      await record(stores, demanded);
      const deps = digestDeps(stores, sender, () => new Date(noon));
      await Promise.all(Array.from({ length: 10 }, () => runDigest(deps)));
      expect(mails.map(({ to }) => to).sort()).toEqual(
        demoUtility.digest!.to.map(({ email }) => email).sort(),
      );
    } finally {
      await close();
    }
  });

  it('one that is killed after sending and before saying so sends that letter again, once its claim is over', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'digest-killed-'));
    const server = await startDynamodb({ folder: null, port: 0 });
    try {
      const file = join(folder, 'post');
      const run = async (afterMs: number, ...more: string[]) => {
        const instant = new Date(noon + afterMs).toISOString();
        const child = join(import.meta.dirname, '../support/digestChild.ts');
        return promisify(execFile)(process.execPath, [child, server.endpoint, file, instant, ...more]).then(
          ({ stdout }) => JSON.parse(stdout) as DigestReport,
          (error: unknown) => (error as { signal: string }).signal,
        );
      };
      const sentSoFar = async () => (await readFile(file, 'utf8')).trim().split('\n');
      const [first, second] = demoUtility.digest!.to.map(({ email }) => email);

      expect(await run(0, 'kill')).toBe('SIGKILL');
      expect(await sentSoFar()).toEqual([first]);
      // Another run sends the other letter and leaves this one alone while it may still be under way.
      expect(await run(0)).toMatchObject({ written: 0, sent: 1 });
      expect(await run(CLAIM_MS - 1)).toMatchObject({ sent: 0 });
      expect(await sentSoFar()).toEqual([first, second]);
      // At least once, and not exactly once: the same letter goes again.
      expect(await run(CLAIM_MS)).toMatchObject({ sent: 1 });
      expect(await run(10 * CLAIM_MS)).toMatchObject({ sent: 0 });
      expect(await sentSoFar()).toEqual([first, second, first]);
    } finally {
      await server.stop();
      await rm(folder, { recursive: true, force: true });
    }
  }, 60_000);
});

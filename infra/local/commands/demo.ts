import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { logTo } from '../../../functions/log/log.ts';
import type { Statement } from '../../../shared/costs/statement.ts';
import type { PublicSnapshot } from '../../../shared/public/snapshot.ts';
import { say } from '../../../shared/words/index.ts';
import { buildSite, builtSite, projectRoot, siteIsCurrent } from '../buildSite.ts';
import { openDataFolder } from '../dataFolder.ts';
import { demoMembers, demoUtility } from '../demo/index.ts';
import { mainJob } from '../demo/mainJob.ts';
import { demoModels } from '../demo/models.ts';
import { demoRateBooks } from '../demo/rates.ts';
import { ask, send, type DemoServer } from '../demo/send.ts';
import { Teller } from '../demo/teller.ts';
import { townInventoryCsv } from '../demo/town.ts';
import { loadInventoryCsv } from '../loadInventory.ts';
import { startLocalServer, type LocalServer } from '../localServer.ts';
import { readPacketTotals, readPdfLines } from '../packetTotals.ts';
import { membersFor } from '../people.ts';
import { command, tell, terminalLocale } from '../terminal.ts';

const dollars = (amountCents: number): string => `$${(amountCents / 100).toFixed(2)}`;
const line = (left: string, right: string): void => console.log(`  ${left.padEnd(58)}${right.padStart(12)}`);

/** `npm run demo`: the main job from an empty store, through the API, to a packet and a public page in `out/`. */
await command(async () => {
  logTo((text, level) => {
    if (level === 'error') console.error(text);
  });
  if (!(await siteIsCurrent())) {
    tell('command.building-site');
    await buildSite();
  }
  const data = await mkdtemp(join(tmpdir(), 'hsl-demo-'));
  const local = await startLocalServer({
    folder: await openDataFolder(join(data, 'data')),
    port: 0,
    host: '127.0.0.1',
    settings: demoUtility,
    members: membersFor(demoUtility, demoMembers),
    client: builtSite.client,
    log: () => undefined,
    replaying: () => undefined,
  });
  try {
    const members = membersFor(demoUtility, demoMembers);
    const server: DemoServer = {
      origin: local.origin,
      tokenFor: (role) => local.issuer.tokenFor(members[role]),
    };
    const published = join(data, 'data', 'objects', 'published');
    if (!(await play(local, server, published))) process.exitCode = 1;
  } finally {
    await local.close();
    await rm(data, { recursive: true, force: true });
  }
});

async function play(local: LocalServer, server: DemoServer, published: string): Promise<boolean> {
  tell('demo.begin', { utility: demoUtility.name });
  await loadInventoryCsv(townInventoryCsv(), 'tansy-harbor-hydrants.csv', demoMembers.manager);
  const teller = new Teller(new Date());
  for (const edition of demoRateBooks)
    teller.tell('rate-book', { type: 'utility' }, 100, edition, { role: 'manager' });
  for (const model of demoModels)
    teller.tell('hydrant-model', { type: 'utility' }, 99, model, { role: 'manager' });
  for (const told of teller.told.splice(0)) await send(server, told);
  await tellPublic(local);

  const job = mainJob(teller);
  for (const step of job.steps) {
    step.tell(teller);
    for (const told of teller.told.splice(0)) await send(server, told);
    tell(step.words);
    await tellPublic(local);
  }
  return packet(server, job.claimId, published);
}

/** Publishes, and says what the public page says now: read from the page's own data, as a reader gets it. */
async function tellPublic(local: LocalServer): Promise<void> {
  await local.following.settled();
  await local.following.publishNow();
  const response = await fetch(`${local.origin}/v1/snapshot.json`);
  if (!response.ok) throw new Error(`the public snapshot answered ${response.status}`);
  const snapshot = (await response.json()) as PublicSnapshot;
  console.log(
    `    ${say(terminalLocale(), 'demo.public', { out: snapshot.outOfService.length, hydrants: snapshot.inventory?.hydrants ?? 0 })}`,
  );
}

/** Freezes the packet, prints the statement, and holds every printed total against the PDF read back. */
async function packet(server: DemoServer, claimId: string, published: string): Promise<boolean> {
  const locale = terminalLocale();
  const statement = await ask<Statement>(server, 'clerk', `/api/claims/${claimId}/statement`);
  const frozen = await ask<{ url: string; revision: number; pdfSha256: string }>(
    server,
    'clerk',
    `/api/claims/${claimId}/packet`,
    { mode: 'freeze' },
  );
  const response = await fetch(new URL(frozen.url, server.origin));
  if (!response.ok) throw new Error(`the packet's link answered ${response.status}`);
  const pdf = new Uint8Array(await response.arrayBuffer());

  const out = join(projectRoot, 'out');
  await rm(out, { recursive: true, force: true });
  await mkdir(out, { recursive: true });
  await writeFile(join(out, 'packet.pdf'), pdf);
  await cp(published, join(out, 'status'), { recursive: true });

  tell('demo.frozen', { revision: frozen.revision, sha256: frozen.pdfSha256 });
  tell('demo.statement');
  for (const { section, subtotalCents } of statement.sections)
    line(say(locale, `packet.section.${section}`), dollars(subtotalCents));
  line(say(locale, 'demo.total'), dollars(statement.totalCents));
  tell('demo.files', {
    packet: relative(projectRoot, join(out, 'packet.pdf')),
    pages: (await readPdfLines(pdf)).length,
    status: relative(projectRoot, join(out, 'status')),
  });
  return equal(statement, await readPacketTotals(pdf));
}

function equal(statement: Statement, pdf: Awaited<ReturnType<typeof readPacketTotals>>): boolean {
  const locale = terminalLocale();
  const pairs = [
    ...statement.sections.map(({ section, subtotalCents }) => ({
      section: say(locale, `packet.section.${section}`),
      statement: subtotalCents,
      pdf: pdf.sectionCents[section],
    })),
    { section: say(locale, 'demo.total'), statement: statement.totalCents, pdf: pdf.totalCents },
  ];
  const wrong = pairs.filter((pair) => pair.pdf !== pair.statement);
  for (const { section, statement: ours, pdf: theirs } of wrong)
    tell('demo.differs', {
      section,
      statement: dollars(ours),
      pdf: theirs === undefined ? '–' : dollars(theirs),
    });
  if (wrong.length === 0) tell('demo.equal');
  return wrong.length === 0;
}

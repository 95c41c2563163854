import { v7 } from 'uuid';
import { say } from '../../../shared/words/index.ts';
import { deploymentAddress, openAccess } from '../deployed/access.ts';
import { RefusedStart } from '../refusedStart.ts';
import { smoke } from '../smoke/checks.ts';
import { command, tell, terminalLocale } from '../terminal.ts';

/** A table's stream and a projection, with room. */
const SETTLE_MS = 5_000;

/** `npm run smoke -- URL`: is a deployment well, end to end? Exit 1 when it is not. What it hands in is marked as a trial. */
await command(async () => {
  const [named, ...more] = process.argv.slice(2);
  if (named === '--help') {
    tell('smoke.usage');
    return;
  }
  if (named === undefined || named.startsWith('-') || more.length > 0) throw new RefusedStart('smoke.usage');
  const origin = deploymentAddress(named);
  const access = await openAccess(origin, process.env).catch((error: unknown) => {
    if (error instanceof RefusedStart) return null;
    throw error;
  });
  const locale = terminalLocale();
  const well = await smoke(
    {
      origin,
      token: access?.token ?? null,
      now: () => new Date(),
      newId: () => v7(),
      settleMs: SETTLE_MS,
    },
    (check, found) => {
      const what = say(locale, `smoke.${check}`);
      tell('smoke.line', { state: found === null ? 'ok' : 'failed', what, found: found ?? 'none' });
    },
  );
  if (access === null) tell('smoke.open-only', { address: origin });
  tell(well ? 'smoke.well' : 'smoke.not-well', { address: origin });
  if (!well) process.exitCode = 1;
});

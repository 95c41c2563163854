import type { DynamoDBStreamEvent } from 'aws-lambda';
import { logLine } from '../log/log.ts';
import { currentState } from '../records/currentState.ts';
import { openSender } from '../stores/mail/openSender.ts';
import { openTexts } from '../stores/texts/openTexts.ts';
import { environment, inventoryStore, tables } from '../wiring.ts';
import { runDispatch, type DispatchDeps, type DispatchRun } from './run.ts';
import { OperatorFault, wordless } from '../log/wordless.ts';

let opened: Promise<DispatchDeps> | undefined;

async function open(): Promise<DispatchDeps> {
  const { utility: settings, mailUrl, textsUrl } = environment();
  if (mailUrl === null || textsUrl === null) throw new OperatorFault('no sender of messages is set here');
  return {
    ...tables(),
    settings,
    current: currentState(tables()),
    inventory: await inventoryStore(),
    email: await openSender(mailUrl, settings.dispatchMessages?.from ?? ''),
    texts: await openTexts(textsUrl),
    now: () => new Date(),
    log: logLine,
  };
}

/**
 * Messages to fire dispatch, whatever woke it: the stream of the projections table (a hydrant or strike changed; keys
 * are all it reads) or the schedule (what failed is tried again). Throws when the stores are away, so that the stream is
 * tried again and the alarm on errors sees it.
 */
export const handler = wordless(async (event: Partial<DynamoDBStreamEvent>): Promise<DispatchRun | null> => {
  if (!environment().utility.dispatchMessages?.on) return null;
  // A failed start is not kept: the next event starts anew.
  opened ??= open().catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  const run = await runDispatch(await opened, event.Records ?? []);
  const { sent, failed, dead, overtaken } = run.report;
  if (sent + failed + dead + overtaken > 0)
    logLine({ level: dead > 0 ? 'error' : 'info', event: 'dispatch-messages', ...run.report });
  return run;
});

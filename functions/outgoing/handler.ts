import { logLine } from '../log/log.ts';
import { awsSendingAccount } from '../stores/mail/awsSendingAccount.ts';
import { environment, tables } from '../wiring.ts';
import { checkOutgoing, type OutgoingDeps, type OutgoingReport } from './check.ts';
import { wordless } from '../log/wordless.ts';

let deps: OutgoingDeps | undefined;

/** Woken by the clock: is anything late, and may the account send at all? Its line is what the alarms count. */
export const handler = wordless(async (): Promise<OutgoingReport> => {
  deps ??= {
    ...tables(),
    settings: environment().utility,
    account: awsSendingAccount(),
    now: () => new Date(),
    log: logLine,
  };
  return checkOutgoing(deps);
});

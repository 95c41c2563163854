import type { MailSender } from '../../functions/stores/mail/mailSender.ts';
import type { DigestDeps } from '../../functions/digest/run.ts';
import { currentState } from '../../functions/records/currentState.ts';
import { projectStream } from '../../functions/project/project.ts';
import type { TableStores } from '../../functions/stores/dynamodb/stores.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { fact, onClaim, onStrike, uuid } from './submissions.ts';

/** A strike of the evening of 3 March 2026 in New York, with a claim on which a demand was sent on 1 April. Invented. */
export const demanded: readonly Submission[] = [
  fact('strike', 9, onStrike(9)),
  fact('claim-opened', 1, onClaim(1), { strikeId: uuid(9), claimNumber: '2026-0007' }),
  fact('packet-frozen', 8, onClaim(1), { revision: 1, demandCents: 500_000 }),
  fact('demand-sent', 10, onClaim(1), { sentOn: '2026-04-01', amountCents: 500_000, to: 'Ann Example' }),
];

/** Puts submissions into a ledger and computes what is kept for reading. */
export async function record(stores: TableStores, submissions: readonly Submission[]): Promise<void> {
  for (const submission of submissions) {
    await stores.ledger.accept(submission, { recordedAt: '2026-04-01T15:00:00.000Z', deliveredBy: null });
    await projectStream({ ...stores, hydrantType: async () => 'unknown' }, streamOfSubmission(submission));
  }
}

export function digestDeps(
  stores: TableStores,
  sender: MailSender,
  now: () => Date,
  over: Partial<UtilitySettings> = {},
): DigestDeps & { readonly logged: LogEntry[] } {
  const logged: LogEntry[] = [];
  return {
    ...stores,
    settings: { ...demoUtility, ...over },
    current: currentState(stores),
    sender,
    now,
    log: (entry) => void logged.push(entry),
    logged,
  };
}

import type { DispatchDeps } from '../../functions/dispatchSend/run.ts';
import { runDispatch } from '../../functions/dispatchSend/run.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import type { KeptItem } from '../../functions/project/deps.ts';
import { projectStream } from '../../functions/project/project.ts';
import { currentState } from '../../functions/records/currentState.ts';
import { memoryStores, type TableStores } from '../../functions/stores/dynamodb/stores.ts';
import type { CurrentInventory } from '../../functions/stores/inventory/inventory.ts';
import type { MailSender } from '../../functions/stores/mail/mailSender.ts';
import type { TextSender } from '../../functions/stores/texts/textSender.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import type { Hydrant } from '../../shared/inventory/hydrant.ts';
import { streamOfSubmission, type Submission } from '../../shared/submissions/submission.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';

/** What was handed to the services. */
export interface Went {
  readonly to: string;
  readonly text: string;
}

/** Services that take everything, unless `fails` says otherwise of an attempt. */
export function postOffice(fails: (attempt: number) => Error | null = () => null) {
  const went: Went[] = [];
  let attempt = 0;
  const take = (to: string, text: string): string => {
    const error = fails(attempt++);
    if (error) throw error;
    went.push({ to, text });
    return `m-${went.length}`;
  };
  const email: MailSender = { send: async ({ to, subject, text }) => take(to, `${subject}\n\n${text}`) };
  const texts: TextSender = { send: async ({ phone, text }) => take(phone, text) };
  return { went, email, texts };
}

export const recipients = demoUtility.dispatchMessages!.to;
export const addresses = recipients.map((one) => (one.by === 'email' ? one.email : one.phone));

export interface DispatchWorldOptions {
  readonly stores?: TableStores;
  readonly hydrants?: readonly Hydrant[];
  readonly now: () => Date;
  readonly office?: ReturnType<typeof postOffice>;
  readonly settings?: Partial<UtilitySettings>;
}

/**
 * Ledger, projections and outbox with the real projector and the real sender of messages, as the streams tie them: what
 * is accepted is projected, and what was projected wakes the sender.
 */
export function dispatchWorld(options: DispatchWorldOptions) {
  const { stores = memoryStores(), hydrants = [], now, office = postOffice() } = options;
  const byId = new Map(hydrants.map((hydrant) => [hydrant.hydrantId, hydrant]));
  const stock = { hydrants, byId, manifestSha256: 'x' } as unknown as CurrentInventory;
  const logged: LogEntry[] = [];
  const settings = { ...demoUtility, ...options.settings };
  const deps: DispatchDeps = {
    ...stores,
    settings,
    current: currentState(stores),
    inventory: { current: async () => (hydrants.length > 0 ? stock : null) },
    email: office.email,
    texts: office.texts,
    now,
    log: (entry) => void logged.push(entry),
    pause: async () => undefined,
  };
  let changed: KeptItem[] = [];
  const project = (submission: Submission) =>
    projectStream(
      {
        ...stores,
        hydrantType: async (hydrantId) => byId.get(hydrantId)?.type ?? 'unknown',
        kept: (items) => void changed.push(...items),
      },
      streamOfSubmission(submission),
    );
  const wake = (items: readonly KeptItem[] = []) => runDispatch(deps, items.map(streamRecord));
  return {
    stores,
    deps,
    settings,
    logged,
    went: office.went,
    /** Accepts and projects, and wakes nobody. */
    async accept(...submissions: readonly Submission[]): Promise<void> {
      for (const submission of submissions) {
        await stores.ledger.accept(submission, { recordedAt: now().toISOString(), deliveredBy: null });
        await project(submission);
      }
    },
    project,
    /** What has been projected since it was last asked. */
    take(): readonly KeptItem[] {
      const items = changed;
      changed = [];
      return items;
    },
    /** Accepts, projects and tells dispatch, as each fact comes in. */
    async record(...submissions: readonly Submission[]): Promise<void> {
      for (const submission of submissions) {
        await this.accept(submission);
        await wake(this.take());
      }
    },
    wake,
  };
}

/** A record of the projections table's stream, which carries keys and nothing else. */
export const streamRecord = ({ partition, key }: KeptItem, index: number) => ({
  eventID: String(index),
  eventName: 'MODIFY' as const,
  eventVersion: '1.1',
  eventSource: 'aws:dynamodb',
  awsRegion: 'us-east-1',
  dynamodb: {
    ApproximateCreationDateTime: 1_772_600_000,
    Keys: { partition: { S: partition }, key: { S: key } },
    SequenceNumber: `${4_421_584_500_000_000_000_000 + index}${index}`,
    SizeBytes: 40,
    StreamViewType: 'KEYS_ONLY' as const,
  },
  eventSourceARN: 'arn:aws:dynamodb:us-east-1:123456789012:table/Projections/stream/2026-03-04T00:00:00.000',
});

import {
  GetAccountCommand,
  GetEmailIdentityCommand,
  NotFoundException,
  SESv2Client,
} from '@aws-sdk/client-sesv2';
import { GetSMSSandboxAccountStatusCommand, SNSClient } from '@aws-sdk/client-sns';
import { mockClient } from 'aws-sdk-client-mock';
import { beforeEach, describe, expect, it } from 'vitest';
import { checkOutgoing, type OutgoingDeps } from '../../functions/outgoing/check.ts';
import { memoryStores } from '../../functions/stores/dynamodb/stores.ts';
import { awsSendingAccount } from '../../functions/stores/mail/awsSendingAccount.ts';
import type { SendingAccount } from '../../functions/stores/mail/sendingAccount.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { newEntry, failed } from '../../shared/digest/outbox.ts';
import { hydrantSubject, type NoticeDelivery } from '../../shared/dispatch/notice.ts';
import { endDelivery, newDelivery, type Delivery } from '../../shared/outbox/delivery.ts';
import { DISPATCH_PATIENCE_MS, isLate, LETTER_PATIENCE_MS } from '../../shared/outbox/late.ts';

const noon = new Date('2026-03-04T17:00:00Z');
const after = (minutes: number): Date => new Date(noon.getTime() + minutes * 60_000);
const open: SendingAccount = {
  mailIsOpen: async () => true,
  isConfirmed: async () => true,
  textsAreOpen: async () => true,
};

let logged: LogEntry[];
let stores: ReturnType<typeof memoryStores>;
const deps = (now: Date, over: Partial<OutgoingDeps> = {}): OutgoingDeps => ({
  ...stores,
  settings: demoUtility,
  account: open,
  now: () => now,
  log: (entry) => void logged.push(entry),
  ...over,
});
beforeEach(() => {
  logged = [];
  stores = memoryStores();
});

const toDispatch = (over: Partial<Delivery> = {}): NoticeDelivery => ({
  ...newDelivery(noon),
  day: '2026-03-04',
  subject: hydrantSubject('H-0001'),
  number: 1,
  recipientId: 'dispatch-floor',
  ...over,
});

describe('what has not gone out', () => {
  it('is late once its patience is over, whatever keeps it, and at once when given up', () => {
    for (const state of ['waiting', 'claimed', 'failed'] as const) {
      const one = { ...newDelivery(noon), state };
      expect([state, isLate(one, DISPATCH_PATIENCE_MS, after(9))]).toEqual([state, false]);
      expect([state, isLate(one, DISPATCH_PATIENCE_MS, after(10))]).toEqual([state, true]);
    }
    expect(isLate(endDelivery(newDelivery(noon), 'dead', noon), DISPATCH_PATIENCE_MS, noon)).toBe(true);
    for (const state of ['sent', 'overtaken'] as const)
      expect(isLate({ ...newDelivery(noon), state }, LETTER_PATIENCE_MS, after(10_000))).toBe(false);
  });

  it('is counted: a message to dispatch, a letter', async () => {
    await stores.notices.addDelivery(toDispatch());
    const entry = newEntry('2026-03-04', 'c-1', { to: 'c@example.com', subject: 's', text: 't' }, noon);
    await stores.outbox.add({ ...failed({ ...entry, tries: 5 }, 'away', noon) });
    expect(await checkOutgoing(deps(after(9)))).toMatchObject({ lateMessages: 0, lateLetters: 1 });
    expect(await checkOutgoing(deps(after(11)))).toMatchObject({ lateMessages: 1, lateLetters: 1 });
    expect(logged.at(-1)).toEqual({
      level: 'warn',
      event: 'outgoing-checked',
      lateMessages: 1,
      lateLetters: 1,
      closedWays: 0,
      closed: '',
    });
    // Nothing of whom it was for, or of what it said.
    expect(JSON.stringify(logged)).not.toMatch(/example\.com|H-0001|dispatch-floor|c-1/);
  });

  it('is nothing when all went: the line is written all the same, for the alarm that listens for silence', async () => {
    await stores.notices.addDelivery(toDispatch({ state: 'sent' }));
    await checkOutgoing(deps(after(60)));
    expect(logged).toEqual([
      {
        level: 'info',
        event: 'outgoing-checked',
        lateMessages: 0,
        lateLetters: 0,
        closedWays: 0,
        closed: '',
      },
    ]);
  });
});

describe('whether the account may send', () => {
  const shut: SendingAccount = {
    mailIsOpen: async () => false,
    isConfirmed: async () => false,
    textsAreOpen: async () => false,
  };

  it('is asked of what the settings want sent', async () => {
    expect((await checkOutgoing(deps(noon, { account: shut }))).closed).toEqual([
      'mail-sandbox',
      'letter-sender-unconfirmed',
      'dispatch-sender-unconfirmed',
      'text-sandbox',
    ]);
    expect(logged[0]).toMatchObject({ closedWays: 4 });
  });

  it('and of nothing else: who sends no texts need not leave that sandbox', async () => {
    const { dispatchMessages: messages, ...rest } = demoUtility;
    const mailOnly = { ...messages!, to: messages!.to.filter(({ by }) => by === 'email') };
    const settings = { ...rest, dispatchMessages: mailOnly };
    expect((await checkOutgoing(deps(noon, { account: shut, settings }))).closed).not.toContain(
      'text-sandbox',
    );
    const { digest: _, ...silent } = rest;
    expect((await checkOutgoing(deps(noon, { account: shut, settings: silent }))).closed).toEqual([]);
  });

  it('that cannot be asked fails, and does not look like good news', async () => {
    const account = { ...open, mailIsOpen: () => Promise.reject(new Error('away')) };
    await expect(checkOutgoing(deps(noon, { account }))).rejects.toThrow('away');
    expect(logged).toEqual([]);
  });
});

// Fields: SES API v2 reference, GetAccount and GetEmailIdentity; SNS API reference, GetSMSSandboxAccountStatus.
describe('the services’ answers', () => {
  const account = () =>
    awsSendingAccount(new SESv2Client({ region: 'us-east-1' }), new SNSClient({ region: 'us-east-1' }));

  it.each([
    [true, true, true],
    [false, true, false],
    [true, false, false],
  ])(
    'mail: out of the sandbox %s, not paused %s: %s',
    async (ProductionAccessEnabled, SendingEnabled, is) => {
      mockClient(SESv2Client).on(GetAccountCommand).resolves({ ProductionAccessEnabled, SendingEnabled });
      expect(await account().mailIsOpen()).toBe(is);
    },
  );

  it('a sender: confirmed, waiting, not there', async () => {
    const mock = mockClient(SESv2Client);
    mock
      .on(GetEmailIdentityCommand, { EmailIdentity: 'a@example.com' })
      .resolves({ VerifiedForSendingStatus: true });
    mock
      .on(GetEmailIdentityCommand, { EmailIdentity: 'b@example.com' })
      .resolves({ VerifiedForSendingStatus: false });
    mock
      .on(GetEmailIdentityCommand, { EmailIdentity: 'c@example.com' })
      .rejects(new NotFoundException({ message: 'none', $metadata: {} }));
    const asked = ['a', 'b', 'c'].map((who) => account().isConfirmed(`${who}@example.com`));
    expect(await Promise.all(asked)).toEqual([true, false, false]);
  });

  it.each([
    [false, true],
    [true, false],
    [undefined, false],
  ])('texts: in the sandbox %s: %s', async (IsInSandbox, is) => {
    mockClient(SNSClient).on(GetSMSSandboxAccountStatusCommand).resolves({ IsInSandbox });
    expect(await account().textsAreOpen()).toBe(is);
  });
});

import { describe, expect, it } from 'vitest';
import { forms } from '../../../shared/submissions/kinds.ts';
import { hasWords } from '../../../shared/words/index.ts';
import { lifeCautionCodes, lifeCautions } from '../../../shared/claims/cautions.ts';
import { lifeKinds } from '../../../shared/claims/nextSteps.ts';
import { mailto } from '../../../site/src/app/core/mailto.ts';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { decode } from '../../../site/src/app/form/decode.ts';
import { encode, typedPath } from '../../../site/src/app/form/encode.ts';
import { specOf } from '../../../site/src/app/form/specs/index.ts';
import { paymentReceivedSpec } from '../../../site/src/app/form/specs/claimLife/money.ts';
import type { FormContext } from '../../../site/src/app/form/spec.ts';
import { told } from '../../shared/clocks/support.ts';
import { claimLifeBodies } from '../../support/claimLifeBodies.ts';

const zone = 'America/New_York';
const now = new Date('2026-11-20T15:00:00Z');
const formed = Object.entries(claimLifeBodies).filter(([kind]) => kind !== 'letter-sent');
const spec = (kind: string) => specOf(kind)!;

describe('a recorded event of a claim’s life opened as a form', () => {
  it.each(formed)('%s gives the same body again', (kind, body) => {
    const values = decode(spec(kind).nodes, body, zone);
    // Years of the sample lie ahead of this machine’s clock as well as behind it.
    const checked = checkForm(spec(kind), values, zone, undefined, new Date('2030-01-01T00:00:00Z'));
    expect(checked).toEqual({ ok: true, body: forms[spec(kind).kind].body.parse(body) });
  });

  it('has no form for a letter, which the server records', () => {
    expect(specOf('letter-sent')).toBeNull();
    expect(lifeKinds.filter((kind) => specOf(kind) === null)).toEqual([]);
  });

  it('keeps what was answered to a deadline out of the answer where it means nothing', () => {
    const values = decode(spec('deadline-answered').nodes, claimLifeBodies['deadline-answered'], zone);
    const { body } = encode(
      spec('deadline-answered').nodes,
      { ...values, answer: 'done' },
      { zone, nullable: [] },
    );
    expect(body['until']).toBeNull();
  });
});

describe('a new form of a claim’s life', () => {
  const context = {
    // One in the morning in Greenwich; still the evening before where the utility is.
    now: new Date('2026-11-20T01:00:00Z'),
    zone,
    personId: 'w-9',
    claim: null,
    events: [],
    asked: { deadline: 'limitation', dueOn: '2028-03-04' },
  } as unknown as FormContext;
  const days = {
    'claim-acknowledged': 'receivedOn',
    'payment-received': 'receivedOn',
    'line-disputed': 'saidOn',
    'written-off': 'writtenOffOn',
    'claim-closed': 'closedOn',
  };
  it.each(Object.entries(days))('%s starts on the utility’s day', (kind, field) => {
    expect(spec(kind).blank(context)[field]).toBe('2026-11-19');
  });

  it('starts with the person who writes as the one who decided, and with the date that was asked about', () => {
    expect(spec('written-off').blank(context)['decidedByWorkerId']).toBe('w-9');
    expect(spec('deadline-answered').blank(context)).toMatchObject({
      deadline: 'limitation',
      dueOn: '2028-03-04',
    });
  });

  it('closes as paid what the payer has paid, by whatever name the claim stands', () => {
    const closed = (askedCents: number, paidCents: number) =>
      spec('claim-closed').blank({
        ...context,
        claim: { life: { standing: 'referred' }, money: { askedCents, paidCents } },
      } as unknown as FormContext)['how'];
    expect(closed(50_000, 50_000)).toBe('paid');
    expect(closed(50_000, 49_999)).toBe('');
    expect(closed(0, 0)).toBe('');
  });

  it('starts the adjuster with the number of the latest acknowledgement', () => {
    const acknowledged = (reference: string, second: number) => ({
      submission: told('claim-acknowledged', second, { receivedOn: '2026-04-10', reference }),
      receivedAt: `2026-04-10T12:00:0${second}.000Z`,
    });
    const blank = (events: readonly object[]) =>
      spec('adjuster-assigned').blank({ ...context, events } as unknown as FormContext)['adjuster.reference'];
    expect(blank([])).toBe('');
    expect(blank([acknowledged('MV-1', 1), acknowledged('MV-2', 2)])).toBe('MV-2');
  });
});

describe('an address to write to', () => {
  // HTML, "valid e-mail address" (4.10.5.1.5).
  it.each([
    ['adjuster@insurer.example', 'mailto:adjuster@insurer.example'],
    ['ask the front desk', null],
    ['a@b.example?bcc=c@d.example', null],
    // RFC 6068, section 2: `?` starts the header fields, so it is encoded within an address.
    ['a?bcc=c@d.example', 'mailto:a%3Fbcc%3Dc@d.example'],
    ['javascript:alert(1)', null],
    ['', null],
    [null, null],
  ])('%j links to %j', (said, link) => expect(mailto(said)).toBe(link));
});

describe('a payment, line by line', () => {
  const values = {
    receivedOn: '2026-11-19',
    amountCents: '1,000.00',
    how: 'cheque',
    marked: 'part',
    deposited: 'deposited',
    lines: [
      { lineId: 'a' },
      { lineId: 'b', paidCents: '600.00' },
      { lineId: 'c', paidCents: '', shortCents: '150', reason: 'hours', words: 'Two would do' },
      { lineId: 'd', paidCents: '400.00', shortCents: '10' },
    ],
    exhibits: [],
  };
  const check = (more: object) =>
    checkForm(paymentReceivedSpec, { ...values, ...more }, zone, undefined, now);

  it('sends the lines of which something was said; a line that is refused was paid nothing', () => {
    const { body } = encode(paymentReceivedSpec.nodes, values, { zone, nullable: [] });
    expect(body['lines']).toEqual([
      { lineId: 'b', paidCents: 60_000, shortCents: 0, reason: null, words: null },
      { lineId: 'c', paidCents: 0, shortCents: 15_000, reason: 'hours', words: 'Two would do' },
      { lineId: 'd', paidCents: 40_000, shortCents: 1_000, reason: null, words: null },
    ]);
  });

  it('asks for the reason of a cut, beside the line that was cut', () => {
    expect(check({})).toMatchObject({
      ok: false,
      problems: [{ code: 'short-without-reason', path: 'lines.3.reason' }],
    });
    const { rows } = encode(paymentReceivedSpec.nodes, values, { zone, nullable: [] });
    expect(typedPath('lines.2.reason', rows)).toBe('lines.3.reason');
  });

  it('says that lines come to more than the payment', () => {
    const lines = [{ lineId: 'b', paidCents: '1,000.01' }];
    expect(check({ lines })).toMatchObject({
      ok: false,
      problems: [
        { code: 'lines-above-payment', path: 'lines', params: { paidCents: 100_001, amountCents: 100_000 } },
      ],
    });
    expect(check({ lines: [{ lineId: 'b', paidCents: '1,000.00' }] })).toMatchObject({ ok: true });
  });

  it('needs no line at all', () => {
    expect(check({ lines: [] })).toMatchObject({ ok: true, body: { lines: [] } });
  });
});

describe('cautions before an event is recorded', () => {
  const money = { askedCents: 100_000, balanceCents: 80_000, overpaidCents: 2_500 };
  const toSue = { deadline: 'limitation', dueOn: '2028-03-04' };
  const codes = (
    kind: Parameters<typeof lifeCautions>[0],
    body: object,
    known: typeof money | null = money,
  ) => lifeCautions(kind, body as Record<string, unknown>, known).map(({ code }) => code);

  // UCC 3-311(a), (b): an instrument tendered in full satisfaction of a claim that is disputed or unliquidated, once
  // payment of it is obtained, may discharge the claim.
  it.each([
    [{ amountCents: 50_000, marked: 'full', deposited: 'deposited' }, ['full-payment']],
    [{ amountCents: 50_000, marked: 'full' }, ['full-payment']],
    [{ amountCents: 50_000, marked: 'full', deposited: 'held' }, ['full-payment-held']],
    [{ amountCents: 50_000, marked: 'full', deposited: 'returned' }, []],
    [{ amountCents: 50_000, marked: 'part', deposited: 'deposited' }, []],
    [{ amountCents: 80_001, marked: 'not-marked', deposited: 'deposited' }, ['above-balance']],
    [{ amountCents: 80_000, marked: 'not-marked', deposited: 'deposited' }, []],
  ])('of the payment %o: %o', (body, expected) => {
    expect(codes('payment-received', body)).toEqual(expected);
  });

  it('cautions where it does not know what is owed', () => {
    expect(codes('payment-received', { amountCents: 1, marked: 'full' }, null)).toEqual(['full-payment']);
  });

  it.each([
    ['offer-made', { amountCents: 70_000, inFull: true, releaseAsked: true }, ['release', 'offer-in-full']],
    ['offer-made', { amountCents: 80_000, inFull: true, releaseAsked: false }, []],
    ['offer-answered', { answer: 'accepted' }, ['accepting']],
    ['offer-answered', { answer: 'declined' }, []],
    ['written-off', { amountCents: 80_000 }, ['write-off']],
    ['written-off', { amountCents: 90_000 }, ['write-off', 'write-off-above']],
    ['deadline-answered', { deadline: 'limitation', answer: 'let-go' }, ['let-go-limitation']],
    ['deadline-answered', { deadline: 'follow-up-by:1', answer: 'let-go' }, ['let-go']],
    ['deadline-answered', { ...toSue, answer: 'tolled', until: '2029-01-01' }, []],
    ['deadline-answered', { ...toSue, answer: 'tolled', until: '2028-03-04' }, ['later-day-needed']],
    ['deadline-answered', { ...toSue, answer: 'tolled', until: null }, ['later-day-needed']],
    // Nobody at the utility puts off the day on which its right to sue ends.
    ['deadline-answered', { ...toSue, answer: 'put-off', until: '2029-01-01' }, ['answers-nothing']],
    ['deadline-answered', { ...toSue, answer: 'done' }, ['answers-nothing']],
    ['deadline-answered', { deadline: 'follow-up-by:1', dueOn: '2026-12-01', answer: 'done' }, []],
    ['claim-closed', { how: 'paid' }, ['closing-open']],
    ['refund-paid', { amountCents: 2_500 }, []],
    ['refund-paid', { amountCents: 2_501 }, ['refund-above']],
  ] as const)('%s %o: %o', (kind, body, expected) => {
    expect(codes(kind, body)).toEqual(expected);
  });

  it('measure a disputed amount against its own line, and bound nothing by a line that is not known', () => {
    const disputed = (...lines: readonly (readonly [string, number | null])[]) =>
      lifeCautions(
        'line-disputed',
        { lines: lines.map(([lineId, disputedCents]) => ({ lineId, disputedCents })) },
        money,
        new Map([
          ['crew', 40_000],
          ['kit', 30_000],
        ]),
      );
    expect(disputed(['crew', 40_000], ['kit', null], ['gone', 90_000])).toEqual([]);
    // 1,000 above the one and 500 above the other; what the third leaves free makes up for neither.
    expect(disputed(['crew', 41_000], ['kit', 30_500], ['kit', 1])).toEqual([
      { code: 'dispute-above-line', params: { overCents: 1_500 } },
    ]);
  });

  it('are said in both languages', () => {
    expect(lifeCautionCodes.filter((code) => !hasWords(`caution.life.${code}`))).toEqual([]);
  });
});

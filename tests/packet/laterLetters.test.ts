import { beforeAll, describe, expect, it } from 'vitest';
import type { LaterDraft } from '../../shared/letters/later/answer.ts';
import { unprintable } from '../../functions/packets/pdf/unprintable.ts';
import { evidenceKey } from '../../functions/stores/evidence/byHash.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import type { Fact } from '../../shared/submissions/submission.ts';
import { demoClaim } from '../support/demoClaim.ts';
import { packetWorld } from '../support/packetWorld.ts';
import { everythingIn, withPdf } from '../support/pdf.ts';
import { fact, uuid } from '../support/submissions.ts';

/** The demo's claim, demanded and paid short on its labor. */
const demo = demoClaim();
const subject = { type: 'claim' as const, claimId: demo.claimId };
let world: Awaited<ReturnType<typeof packetWorld>>;
let statement: Statement;
let payment: Fact<'payment-received'>;
const base = `/api/claims/${demo.claimId}`;
const record = (...facts: readonly Fact[]) =>
  Promise.all(
    facts.map((one) =>
      world.stores.ledger.accept(one, { recordedAt: '2026-11-25T14:00:00Z', deliveredBy: null }),
    ),
  );
const order = (over: Record<string, unknown> = {}) => ({
  submissionId: uuid(900),
  letter: 'reply-to-dispute',
  text: '[Dear {adjuster}:]\n\nBalance: {balance}\n\n{reply}',
  to: 'Harrowgate Casualty\n200 Counting House Row',
  how: 'post',
  on: '2026-11-20',
  answers: payment.submissionId,
  ...over,
});

beforeAll(async () => {
  world = await packetWorld(demo);
  statement = (await world.ask(`${base}/statement`)).body as Statement;
  const total = statement.totalCents;
  const labor = statement.lines.find(({ kind }) => kind === 'labor')!;
  payment = fact('payment-received', 803, subject, {
    receivedOn: '2026-11-18',
    amountCents: total - 100_00,
    deposited: 'deposited',
    marked: 'part',
    lines: [
      {
        lineId: labor.lineId,
        paidCents: 0,
        shortCents: 100_00,
        reason: 'hours',
        words: 'Two hours would do',
      },
    ],
  });
  await record(
    fact('packet-frozen', 801, subject, { revision: 1, demandCents: total }),
    fact('demand-sent', 802, subject, { revision: 1, sentOn: '2026-10-01', amountCents: total }),
    fact('adjuster-assigned', 804, subject, {
      assignedOn: '2026-10-09',
      adjuster: { name: 'Ann Example', email: null, phone: null, reference: 'HC-77' },
    }),
    payment,
  );
});

describe('a letter after the packet', () => {
  it('is drafted from the claim: sums, days, the adjuster, and a reply to each cut', async () => {
    const { status, body } = await world.ask(
      `${base}/letters/reply-to-dispute?answers=${payment.submissionId}`,
    );
    const { values, template, contrary } = body as LaterDraft;
    expect(status).toBe(200);
    // 1 October to 25 November 2026 are 55 days (Python: date(2026, 11, 25) - date(2026, 10, 1)).
    expect(values).toMatchObject({
      adjuster: 'Ann Example',
      payerReference: 'HC-77',
      balance: '$100.00',
      daysSinceDemand: '55',
      theirWords: '“Two hours would do”',
    });
    const labor = statement.lines.find(({ kind }) => kind === 'labor')!;
    for (const part of ['$100.00', labor.arithmetic, labor.authority!.title, '645.117(b)'])
      expect(values.reply).toContain(part);
    expect(template).toContain('{reply}');
    expect(contrary).toEqual([]);
    expect((await world.ask(`${base}/letters/poem`)).status).toBe(404);
  });

  it('is a PDF in the utility’s letterhead, kept and recorded as it left, once', async () => {
    // Accents, typographic quotes, an em dash, eighths and a pasted ligature are printed.
    const printable = 'Ñandú, “naïve” — 1⅛ in., ﬁne, €5, § 1\u00a0½';
    expect(unprintable(printable)).toEqual([]);
    const first = await world.ask(`${base}/letters`, { body: order() });
    expect(first.status).toBe(201);
    const { pdfSha256 } = first.body as { pdfSha256: string };
    const kept = await world.objects.get(evidenceKey(pdfSha256));
    const text = (await everythingIn(kept!.bytes)).replaceAll(/\s+/g, ' ');
    for (const part of [
      'Tansy Harbor Water Department',
      'Dear Ann Example:',
      'Balance: $100.00',
      'November 20, 2026',
      'HC-77',
      'Counting House Row',
      'not legal advice',
    ])
      expect(text).toContain(part);
    expect(await withPdf(kept!.bytes, async ({ numPages }) => numPages)).toBeLessThanOrEqual(2);

    const again = await world.ask(`${base}/letters`, { body: order() });
    expect((again.body as { pdfSha256: string }).pdfSha256).toBe(pdfSha256);
    const sent = (await world.stores.ledger.readStream(`claim:${demo.claimId}`)).filter(
      ({ submission }) => submission.kind === 'letter-sent',
    );
    expect(sent).toHaveLength(1);
    expect(sent[0]!.submission.body).toMatchObject({
      letter: 'reply-to-dispute',
      sentOn: '2026-11-20',
      amountCents: 100_00,
      pdfSha256,
      pdfBytes: kept!.bytes.byteLength,
    });
    // What it says and whom it went to can be forgotten; that it was sent cannot.
    const bare = await world.stores.ledger.readStream(`claim:${demo.claimId}`, { personal: false });
    const fact = bare.find(({ submission }) => submission.kind === 'letter-sent')!.submission;
    expect(fact.body).toMatchObject({ to: null, text: null });
  });

  it('edited after its answer was lost, is not taken for the letter that left', async () => {
    for (const [over, path] of [
      [{ text: 'Something else' }, 'text'],
      [{ on: '2026-11-19' }, 'sentOn'],
      [{ to: 'Somebody else' }, 'to'],
      [{ how: 'email' }, 'how'],
    ] as const) {
      const { status, body } = await world.ask(`${base}/letters`, { body: order(over) });
      const { problems } = body as { problems: { code: string; path: string }[] };
      expect([status, problems[0]?.code, problems[0]?.path]).toEqual([
        409,
        'letter-recorded-otherwise',
        path,
      ]);
    }
  });

  it('asked for twice at one moment is one letter', async () => {
    const twice = await Promise.all(
      [1, 2].map(() => world.ask(`${base}/letters`, { body: order({ submissionId: uuid(920) }) })),
    );
    expect(twice.map(({ status }) => status)).toEqual([201, 201]);
    const [a, b] = twice.map(({ body }) => (body as { pdfSha256: string }).pdfSha256);
    expect(a).toBe(b);
  });

  it('does not go with a field that says nothing, an unknown one, or a day to come', async () => {
    const refused = async (over: Record<string, unknown>): Promise<string[]> => {
      const { status, body } = await world.ask(`${base}/letters`, {
        body: order({ submissionId: uuid(901), ...over }),
      });
      expect(status).toBe(422);
      return (body as { problems: { code: string; path: string }[] }).problems.map(
        ({ code, path }) => `${code} ${path}`,
      );
    };
    expect(await refused({ text: 'Offer: {offer}' })).toEqual(['letter-field-empty letter.offer']);
    expect(await refused({ text: 'Dear {mayor}' })).toEqual(['letter-field-unknown letter.mayor']);
    expect(await refused({ on: '2026-11-26' })).toEqual(['letter-of-the-future on']);
    expect(await refused({ to: '' })).toEqual(['required to']);
    // Hebrew, a fire engine and Han would be question marks in a letter that somebody signs.
    expect(await refused({ text: 'Shalom שלום 🚒', to: '漢字' })).toEqual([
      'letter-unprintable text',
      'letter-unprintable to',
    ]);
  });

  it('replies to as many lines as one dispute may name', async () => {
    const disputed = Array.from({ length: 200 }, (_, index) => ({
      lineId: statement.lines[index % statement.lines.length]!.lineId,
      reason: 'depreciation' as const,
      disputedCents: 1_00,
      words: `Not accepted: ${index}`,
    }));
    const dispute = fact('line-disputed', 950, subject, { saidOn: '2026-11-20', lines: disputed });
    await record(dispute);
    const answers = dispute.submissionId;
    const { template } = (await world.ask(`${base}/letters/reply-to-dispute?answers=${answers}`))
      .body as LaterDraft;
    const { status } = await world.ask(`${base}/letters`, {
      body: order({ submissionId: uuid(951), text: template, answers }),
    });
    expect(status).toBe(201);
  });

  it('prints every date of a plan of ten years, over as many pages as it takes', async () => {
    // 120 instalments, the most that a plan may have: January 2027 to December 2036.
    const instalments = Array.from({ length: 120 }, (_, index) => ({
      dueOn: `${2027 + Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, '0')}-15`,
      amountCents: 10_00 + index,
    }));
    await record(fact('payment-plan', 960, subject, { agreedOn: '2026-11-20', instalments }));
    const { status, body } = await world.ask(`${base}/letters`, {
      body: order({
        submissionId: uuid(961),
        letter: 'payment-plan-offer',
        text: '{instalments}',
        answers: null,
      }),
    });
    expect(status).toBe(201);
    const kept = await world.objects.get(evidenceKey((body as { pdfSha256: string }).pdfSha256));
    const text = await everythingIn(kept!.bytes);
    for (const { amountCents } of instalments) expect(text).toContain(`$${(amountCents / 100).toFixed(2)}`);
  });

  it('is written to the adjuster who was assigned last, however late the one before was typed in', async () => {
    await record(
      // Typed in after the other, as its id and its time say.
      fact('adjuster-assigned', 930, subject, {
        assignedOn: '2026-10-02',
        adjuster: { name: 'Bea Before', email: null, phone: null, reference: 'HC-01' },
      }),
    );
    const { values } = (await world.ask(`${base}/letters/follow-up`)).body as LaterDraft;
    expect(values).toMatchObject({ adjuster: 'Ann Example', payerReference: 'HC-77' });
  });

  it('names what a supplement adds, whether its demand was sent once or twice', async () => {
    const more = statement.totalCents + 75_00;
    const sent = (number: number, sentOn: string) =>
      fact('demand-sent', number, subject, { revision: 2, sentOn, amountCents: more, what: 'supplement' });
    await record(
      fact('packet-frozen', 940, subject, { revision: 2, demandCents: more }),
      sent(941, '2026-11-21'),
      sent(942, '2026-11-22'),
    );
    const { values } = (await world.ask(`${base}/letters/supplement`)).body as LaterDraft;
    expect(values.supplement).toBe('$75.00');
  });

  it('to somebody else than the payer names neither adjuster nor the payer’s numbers', async () => {
    for (const letter of ['notice-own-insurer', 'restitution-statement', 'release-checklist']) {
      const { values, to } = (await world.ask(`${base}/letters/${letter}`)).body as LaterDraft;
      expect([to, values.adjuster, values.payer, values.payerReference, values.policy], letter).toEqual([
        '',
        null,
        null,
        null,
        null,
      ]);
    }
  });

  it('is written by the server alone, and by nobody of the crew', async () => {
    expect((await world.ask(`${base}/letters`, { role: 'crew', body: order() })).status).toBe(403);
    const forged = await world.submit('manager', fact('letter-sent', 910, subject));
    expect([forged.status, forged.body.problems?.[0]?.code]).toEqual([403, 'server-writes-this']);
  });
});

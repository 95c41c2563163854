import type { BodyOf } from '../../shared/submissions/submission.ts';

const paper = {
  sha256: 'a7'.repeat(32),
  bytes: 42_000,
  mediaType: 'application/pdf' as const,
  takenAt: null,
  view: 'document' as const,
  caption: 'Their letter',
};
const remarks = { note: 'By telephone first', exhibits: [paper] };
const id = '0190163d-8694-739b-aea5-966c26f8ad90';

type LifeKind =
  | 'claim-acknowledged'
  | 'adjuster-assigned'
  | 'information-asked'
  | 'information-given'
  | 'line-disputed'
  | 'dispute-answered'
  | 'offer-made'
  | 'offer-answered'
  | 'payment-received'
  | 'payment-reversed'
  | 'refund-paid'
  | 'recovery-shared'
  | 'claim-denied'
  | 'claim-referred'
  | 'restitution-ordered'
  | 'payment-plan'
  | 'letter-sent'
  | 'deadline-answered'
  | 'legal-hold'
  | 'written-off'
  | 'claim-closed'
  | 'claim-reopened';

/** One plausible body of every event of a claim's life after its packet. All of it is invented. */
export const claimLifeBodies: { readonly [K in LifeKind]: BodyOf<K> } = {
  'claim-acknowledged': { receivedOn: '2026-03-14', by: 'The claims office', reference: 'X-118', ...remarks },
  'adjuster-assigned': {
    assignedOn: '2026-03-16',
    company: 'Invented Mutual',
    adjuster: { name: 'Ann Example', email: 'ann@example.com', phone: '555-0142', reference: 'X-118' },
    ...remarks,
  },
  'information-asked': {
    askedOn: '2026-03-20',
    what: 'Time sheets of the crew',
    answerBy: '2026-04-03',
    ...remarks,
  },
  'information-given': {
    givenOn: '2026-03-24',
    answers: id,
    what: 'Time sheets of 3 and 4 March',
    how: 'email',
    ...remarks,
  },
  'line-disputed': {
    saidOn: '2026-03-30',
    revision: 1,
    lines: [{ lineId: 'labor-1', reason: 'hours', disputedCents: 12_000, words: 'Two would have done' }],
    ...remarks,
  },
  'dispute-answered': {
    answeredOn: '2026-04-02',
    answers: id,
    outcome: 'stands',
    reason: 'Traffic had to be held by a third person',
    ...remarks,
  },
  'offer-made': {
    offeredOn: '2026-04-10',
    amountCents: 400_000,
    inFull: true,
    releaseAsked: true,
    expiresOn: '2026-05-10',
    terms: 'Against a release',
    ...remarks,
  },
  'offer-answered': {
    answeredOn: '2026-04-12',
    answers: id,
    answer: 'countered',
    counterCents: 500_000,
    authority: 'Delegation 2025-4',
    ...remarks,
  },
  'payment-received': {
    receivedOn: '2026-04-20',
    amountCents: 400_000,
    how: 'cheque',
    from: 'Invented Mutual',
    reference: '10442',
    marked: 'part',
    deposited: 'deposited',
    jointPayee: 'The county',
    lines: [
      {
        lineId: 'labor-1',
        paidCents: 100_000,
        shortCents: 12_000,
        reason: 'hours',
        words: 'Two would have done',
      },
    ],
    ...remarks,
  },
  'payment-reversed': {
    reversedOn: '2026-04-25',
    payment: id,
    amountCents: 400_000,
    why: 'returned-by-bank',
    ...remarks,
  },
  'refund-paid': {
    paidOn: '2026-05-02',
    payment: id,
    amountCents: 1_000,
    to: 'Invented Mutual',
    reference: 'T-7',
    reason: 'Paid twice',
    ...remarks,
  },
  'recovery-shared': {
    paidOn: '2026-05-04',
    with: 'Pool of the towns',
    amountCents: 300_000,
    basis: 'Policy 12, section 4: the deductible first',
    ...remarks,
  },
  'claim-denied': {
    deniedOn: '2026-04-01',
    reasons: ['liability'],
    words: 'Our driver was pushed',
    ...remarks,
  },
  'claim-referred': {
    referredOn: '2026-06-01',
    to: 'small-claims',
    name: 'Court of the county',
    caseNumber: 'SC-26-77',
    ...remarks,
  },
  'restitution-ordered': {
    orderedOn: '2026-07-01',
    court: 'Court of the county',
    caseNumber: 'CR-26-12',
    amountCents: 250_000,
    payBy: '2026-12-31',
    ...remarks,
  },
  'payment-plan': {
    agreedOn: '2026-06-10',
    instalments: [{ dueOn: '2026-07-10', amountCents: 50_000 }],
    authority: 'Delegation 2025-4',
    ...remarks,
  },
  'letter-sent': {
    letter: 'follow-up',
    sentOn: '2026-04-15',
    how: 'post',
    to: 'Invented Mutual',
    answers: id,
    amountCents: 512_345,
    text: 'We wrote to you on 11 March.',
    pdfSha256: 'b8'.repeat(32),
    pdfBytes: 30_000,
    ...remarks,
  },
  'deadline-answered': {
    deadline: 'limitation',
    dueOn: '2028-03-04',
    answer: 'tolled',
    until: '2028-09-04',
    decidedByWorkerId: 'w-9',
    reason: 'Agreement signed by both',
    ...remarks,
  },
  'legal-hold': {
    from: '2026-06-01',
    hold: 'set',
    reason: 'Suit expected',
    decidedByWorkerId: 'w-9',
    note: 'Told to records',
  },
  'written-off': {
    writtenOffOn: '2026-08-01',
    amountCents: 12_000,
    reason: 'settled',
    lostTo: 'hours',
    decidedByWorkerId: 'w-9',
    authority: 'Delegation 2025-4',
    ...remarks,
  },
  'claim-closed': { closedOn: '2026-08-02', how: 'settled', reason: 'Paid but for the hours', ...remarks },
  'claim-reopened': { reopenedOn: '2026-09-01', reason: 'The bank took the money back', ...remarks },
};

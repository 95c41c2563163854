import { isPaid } from '../../../../../../shared/payments/money.ts';
import { shortReasons } from '../../../../../../shared/submissions/forms/claimLife/common.ts';
import { textOf } from '../../nodes.ts';
import type { FormSpec } from '../../spec.ts';
import { note } from '../parts.ts';
import { day, decidedBy, lastOf, lifeSpec, owed, today } from './shared.ts';

/** What the utility does: answers, refers, agrees, writes off, closes. */

export const disputeAnsweredSpec = lifeSpec(
  'dispute-answered',
  [
    day('answeredOn'),
    {
      type: 'pick',
      name: 'answers',
      of: 'event',
      kinds: ['line-disputed', 'payment-received', 'offer-made', 'claim-denied'],
      required: true,
    },
    {
      type: 'choice',
      name: 'outcome',
      list: 'disputeOutcome',
      choices: ['stands', 'corrected', 'conceded'],
      required: true,
    },
    { type: 'text', name: 'reason', lines: 3, required: true },
  ],
  (context) => ({
    answeredOn: today(context),
    answers: lastOf(context, 'line-disputed', 'payment-received', 'offer-made', 'claim-denied'),
  }),
);

export const offerAnsweredSpec = lifeSpec(
  'offer-answered',
  [
    day('answeredOn'),
    { type: 'pick', name: 'answers', of: 'event', kinds: ['offer-made'], required: true },
    {
      type: 'choice',
      name: 'answer',
      list: 'offerAnswer',
      choices: ['accepted', 'declined', 'countered'],
      required: true,
    },
    {
      type: 'when',
      test: (values) => values['answer'] === 'countered',
      nodes: [{ type: 'money', name: 'counterCents' }],
    },
    { type: 'text', name: 'authority', required: true, words: 'field.claim-authority' },
  ],
  (context) => ({ answeredOn: today(context), answers: lastOf(context, 'offer-made') }),
);

export const claimReferredSpec = lifeSpec(
  'claim-referred',
  [
    day('referredOn'),
    {
      type: 'choice',
      name: 'to',
      list: 'referredTo',
      choices: ['counsel', 'small-claims', 'collection', 'arbitration'],
      required: true,
    },
    { type: 'text', name: 'name' },
    { type: 'text', name: 'caseNumber', keypad: 'code' },
  ],
  (context) => ({ referredOn: today(context) }),
);

export const restitutionOrderedSpec = lifeSpec(
  'restitution-ordered',
  [
    day('orderedOn'),
    { type: 'text', name: 'court', required: true },
    { type: 'text', name: 'caseNumber', keypad: 'code' },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'date', name: 'payBy' },
  ],
  (context) => ({ orderedOn: today(context) }),
);

export const paymentPlanSpec = lifeSpec(
  'payment-plan',
  [
    day('agreedOn'),
    {
      type: 'section',
      id: 'life.instalments',
      nodes: [
        {
          type: 'list',
          name: 'instalments',
          atMost: 120,
          blank: {},
          item: [day('dueOn'), { type: 'money', name: 'amountCents', required: true }],
        },
      ],
    },
    { type: 'text', name: 'authority', required: true, words: 'field.claim-authority' },
  ],
  (context) => ({ agreedOn: today(context), instalments: [{}] }),
);

export const deadlineAnsweredSpec = lifeSpec(
  'deadline-answered',
  [
    { type: 'pick', name: 'deadline', of: 'deadline', fills: 'dueOn', required: true },
    // Goes with the date that is picked: an answer given for another day would not count.
    { type: 'kept', name: 'dueOn' },
    {
      type: 'choice',
      name: 'answer',
      list: 'deadlineAnswer',
      choices: ['done', 'put-off', 'tolled', 'suit-brought', 'let-go', 'not-ours'],
      required: true,
    },
    {
      type: 'when',
      test: (values) => ['put-off', 'tolled'].includes(textOf(values['answer'])),
      nodes: [{ type: 'date', name: 'until' }],
    },
    { type: 'text', name: 'reason', lines: 3, required: true },
    decidedBy,
  ],
  ({ personId, asked }) => ({
    decidedByWorkerId: personId,
    deadline: asked['deadline'] ?? '',
    dueOn: asked['dueOn'] ?? '',
  }),
);

export const legalHoldSpec: FormSpec = {
  kind: 'legal-hold',
  nullable: [],
  nodes: [
    day('from'),
    { type: 'choice', name: 'hold', list: 'hold', choices: ['set', 'lifted'], required: true },
    { type: 'text', name: 'reason', lines: 3, required: true },
    decidedBy,
    note,
  ],
  blank: (context) => ({ from: today(context), decidedByWorkerId: context.personId }),
  occurredAt: () => null,
};

export const writtenOffSpec = lifeSpec(
  'written-off',
  [
    day('writtenOffOn'),
    { type: 'money', name: 'amountCents', required: true },
    {
      type: 'choice',
      name: 'reason',
      list: 'writeOff',
      choices: ['not-collectible', 'no-payer', 'settled', 'cost-of-pursuit', 'limitation', 'other'],
      required: true,
    },
    { type: 'choice', name: 'lostTo', list: 'shortReason', choices: shortReasons },
    decidedBy,
    { type: 'text', name: 'authority', required: true, words: 'field.claim-authority' },
  ],
  (context) => ({
    writtenOffOn: today(context),
    amountCents: owed(context),
    lostTo: context.claim?.money.lost[0]?.reason ?? '',
    decidedByWorkerId: context.personId,
  }),
);

export const claimClosedSpec = lifeSpec(
  'claim-closed',
  [
    day('closedOn'),
    {
      type: 'choice',
      name: 'how',
      list: 'closedHow',
      choices: ['paid', 'settled', 'written-off', 'withdrawn', 'joined'],
      required: true,
    },
    { type: 'text', name: 'reason', lines: 3, required: true },
  ],
  (context) => ({
    closedOn: today(context),
    // By its money: a claim that was referred or went to court as well stands by another name.
    how: context.claim && isPaid(context.claim.money) ? 'paid' : '',
  }),
);

export const claimReopenedSpec = lifeSpec(
  'claim-reopened',
  [day('reopenedOn'), { type: 'text', name: 'reason', lines: 3, required: true }],
  (context) => ({ reopenedOn: today(context) }),
);

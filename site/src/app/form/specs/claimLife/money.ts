import { paymentMarks } from '../../../../../../shared/submissions/forms/claimLife/paymentReceived.ts';
import { shortReasons } from '../../../../../../shared/submissions/forms/claimLife/common.ts';
import { textOf, type List, type Values } from '../../nodes.ts';
import { readCents } from '../../number.ts';
import { day, lastOf, lifeSpec, owed, paidTooMuch, today } from './shared.ts';

/** Money in and out. */

const said = (row: Values, name: string): boolean => textOf(row[name]).trim() !== '';

/** Each line of the statement with what came on it; lines of which nothing was said are not sent. */
const paymentLines: List = {
  type: 'list',
  name: 'lines',
  as: 'allocation',
  atMost: 200,
  skip: (row) => !['paidCents', 'shortCents', 'reason', 'words'].some((name) => said(row, name)),
  item: [
    { type: 'kept', name: 'lineId' },
    { type: 'money', name: 'paidCents', blankIsNothing: true },
    { type: 'money', name: 'shortCents', blankIsNothing: true },
    {
      type: 'when',
      // Why is asked once something was cut, and stays where it was said.
      test: (row) =>
        (readCents(textOf(row['shortCents'])) ?? 0) > 0 || said(row, 'reason') || said(row, 'words'),
      nodes: [
        {
          type: 'choice',
          name: 'reason',
          list: 'shortReason',
          choices: shortReasons,
          compact: true,
          words: 'field.short-reason',
        },
        { type: 'text', name: 'words', lines: 2, words: 'field.payer-words' },
      ],
    },
  ],
};

export const paymentReceivedSpec = lifeSpec(
  'payment-received',
  [
    day('receivedOn'),
    { type: 'money', name: 'amountCents', required: true },
    {
      type: 'choice',
      name: 'how',
      list: 'paidHow',
      choices: ['cheque', 'transfer', 'card', 'cash', 'court', 'other'],
      required: true,
    },
    { type: 'text', name: 'from' },
    { type: 'text', name: 'reference', keypad: 'code' },
    { type: 'choice', name: 'marked', list: 'marked', choices: paymentMarks, required: true },
    {
      type: 'choice',
      name: 'deposited',
      list: 'deposited',
      choices: ['deposited', 'held', 'returned'],
      required: true,
    },
    { type: 'text', name: 'jointPayee' },
    { type: 'section', id: 'life.payment-lines', nodes: [paymentLines] },
  ],
  (context) => ({
    receivedOn: today(context),
    amountCents: owed(context),
    from: context.claim?.payerName ?? '',
    lines: [],
  }),
);

export const paymentReversedSpec = lifeSpec(
  'payment-reversed',
  [
    day('reversedOn'),
    { type: 'pick', name: 'payment', of: 'event', kinds: ['payment-received'], required: true },
    { type: 'money', name: 'amountCents', required: true },
    {
      type: 'choice',
      name: 'why',
      list: 'reversedWhy',
      choices: ['returned-by-bank', 'stopped', 'booked-in-error', 'other'],
      required: true,
    },
  ],
  (context) => ({ reversedOn: today(context), payment: lastOf(context, 'payment-received') }),
);

export const refundPaidSpec = lifeSpec(
  'refund-paid',
  [
    day('paidOn'),
    { type: 'pick', name: 'payment', of: 'event', kinds: ['payment-received'] },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'text', name: 'to' },
    { type: 'text', name: 'reference', keypad: 'code' },
    { type: 'text', name: 'reason', lines: 3, required: true },
  ],
  (context) => ({
    paidOn: today(context),
    payment: lastOf(context, 'payment-received'),
    amountCents: paidTooMuch(context),
    to: context.claim?.payerName ?? '',
  }),
);

export const recoverySharedSpec = lifeSpec(
  'recovery-shared',
  [
    day('paidOn'),
    { type: 'text', name: 'with', required: true },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'text', name: 'basis', lines: 3, required: true },
  ],
  (context) => ({ paidOn: today(context) }),
);

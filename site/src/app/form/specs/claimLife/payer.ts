import { effectiveFacts, ofKind } from '../../../../../../shared/submissions/effective.ts';
import { shortReasons } from '../../../../../../shared/submissions/forms/claimLife/common.ts';
import { day, how, lastOf, lifeSpec, today } from './shared.ts';

/** What the payer does: takes note, names an adjuster, asks, disputes, offers, denies. */

export const acknowledgedSpec = lifeSpec(
  'claim-acknowledged',
  [day('receivedOn'), { type: 'text', name: 'by' }, { type: 'text', name: 'reference', keypad: 'code' }],
  (context) => ({ receivedOn: today(context) }),
);

export const adjusterAssignedSpec = lifeSpec(
  'adjuster-assigned',
  [
    day('assignedOn'),
    { type: 'text', name: 'company' },
    { type: 'text', name: 'adjuster.name' },
    { type: 'text', name: 'adjuster.phone', keypad: 'tel' },
    { type: 'text', name: 'adjuster.email' },
    { type: 'text', name: 'adjuster.reference', keypad: 'code' },
  ],
  (context) => ({
    assignedOn: today(context),
    company: context.claim?.payerName ?? '',
    // The number that their acknowledgement gave is most likely the adjuster's as well.
    'adjuster.reference':
      ofKind(effectiveFacts(context.events).facts, 'claim-acknowledged').at(-1)?.fact.body.reference ?? '',
  }),
);

export const informationAskedSpec = lifeSpec(
  'information-asked',
  [
    day('askedOn'),
    { type: 'text', name: 'what', lines: 3, required: true },
    { type: 'date', name: 'answerBy' },
  ],
  (context) => ({ askedOn: today(context) }),
);

export const informationGivenSpec = lifeSpec(
  'information-given',
  [
    day('givenOn'),
    { type: 'pick', name: 'answers', of: 'event', kinds: ['information-asked'] },
    { type: 'text', name: 'what', lines: 3, required: true },
    how,
  ],
  (context) => ({ givenOn: today(context), answers: lastOf(context, 'information-asked') }),
);

export const lineDisputedSpec = lifeSpec(
  'line-disputed',
  [
    day('saidOn'),
    { type: 'number', name: 'revision', whole: true, required: true },
    {
      type: 'section',
      id: 'life.disputed',
      nodes: [
        {
          type: 'list',
          name: 'lines',
          atMost: 200,
          blank: {},
          item: [
            { type: 'pick', name: 'lineId', of: 'line', fills: 'disputedCents', words: 'field.claim-line' },
            { type: 'money', name: 'disputedCents', required: true },
            {
              type: 'choice',
              name: 'reason',
              list: 'shortReason',
              choices: shortReasons,
              required: true,
              compact: true,
              words: 'field.short-reason',
            },
            { type: 'text', name: 'words', lines: 2, required: true, words: 'field.payer-words' },
          ],
        },
      ],
    },
  ],
  (context) => ({
    saidOn: today(context),
    revision: String(context.claim?.packets.at(-1)?.revision ?? ''),
    lines: [{}],
  }),
);

export const offerMadeSpec = lifeSpec(
  'offer-made',
  [
    day('offeredOn'),
    { type: 'money', name: 'amountCents', required: true },
    { type: 'yes-no', name: 'inFull', required: true },
    { type: 'yes-no', name: 'releaseAsked', required: true },
    { type: 'date', name: 'expiresOn' },
    { type: 'text', name: 'terms', lines: 3 },
  ],
  (context) => ({ offeredOn: today(context) }),
);

export const claimDeniedSpec = lifeSpec(
  'claim-denied',
  [
    day('deniedOn'),
    { type: 'choices', name: 'reasons', list: 'shortReason', choices: shortReasons, required: true },
    { type: 'text', name: 'words', lines: 3, required: true, words: 'field.payer-words' },
  ],
  (context) => ({ deniedOn: today(context) }),
);

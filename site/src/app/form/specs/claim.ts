import { payerKinds } from '../../../../../shared/submissions/forms/claimOpened.ts';
import { effectiveFacts, ofKind } from '../../../../../shared/submissions/effective.ts';
import { localDay } from '../localTime.ts';
import { writeCents } from '../number.ts';
import type { FormSpec } from '../spec.ts';
import { exhibits, papers } from './claimLife/shared.ts';
import { note } from './parts.ts';

/** The desk's forms: a claim against one party, and the record of a demand sent. */

export const claimOpenedSpec: FormSpec = {
  kind: 'claim-opened',
  nullable: [],
  nodes: [
    {
      type: 'section',
      id: 'claim.against',
      nodes: [
        { type: 'kept', name: 'strikeId' },
        { type: 'text', name: 'claimNumber', keypad: 'code', required: true },
        { type: 'pick', name: 'partyId', of: 'party' },
        {
          type: 'choice',
          name: 'payerKind',
          list: 'payerKind',
          choices: payerKinds,
          required: true,
        },
      ],
    },
    {
      type: 'section',
      id: 'claim.payer',
      nodes: [
        { type: 'text', name: 'payer.name' },
        { type: 'text', name: 'payer.address', lines: 3 },
        { type: 'text', name: 'payer.attention' },
        { type: 'text', name: 'payer.reference', keypad: 'code' },
        {
          type: 'when',
          test: (values) => values['payerKind'] === 'own-policy',
          nodes: [{ type: 'money', name: 'deductibleCents', optional: true }],
        },
        note,
      ],
    },
  ],
  blank: ({ strike, nextClaimNumber, history }) => {
    const parties = strike?.partyIds ?? [];
    const partyId = parties.length === 1 ? (parties[0] ?? '') : '';
    const insurer = ofKind(effectiveFacts(history).facts, 'party').find(
      ({ fact }) => fact.submissionId === partyId,
    )?.fact.body.insurer;
    return {
      strikeId: strike?.strikeId ?? '',
      claimNumber: nextClaimNumber,
      partyId,
      // Of the only party there is; whoever else pays is typed over it.
      ...(insurer?.company
        ? {
            payerKind: 'drivers-insurer',
            'payer.name': insurer.company,
            'payer.reference': insurer.claimNumber ?? '',
          }
        : {}),
    };
  },
  occurredAt: () => null,
};

export const demandSentSpec: FormSpec = {
  kind: 'demand-sent',
  nullable: [],
  nodes: [
    { type: 'number', name: 'revision', whole: true, required: true },
    { type: 'money', name: 'amountCents', required: true },
    { type: 'text', name: 'to', required: true },
    {
      type: 'choice',
      name: 'how',
      list: 'demandHow',
      choices: ['email', 'post', 'portal', 'by-hand', 'fax'],
      required: true,
    },
    { type: 'date', name: 'sentOn', required: true },
    {
      type: 'choice',
      name: 'what',
      list: 'demandWhat',
      choices: ['demand', 'supplement', 'revised'],
      optional: true,
    },
    note,
    { ...papers, nodes: [{ ...exhibits, optional: true }] },
  ],
  blank: ({ claim, now, zone }) => {
    const packet = claim?.packets.at(-1);
    return {
      revision: packet ? String(packet.revision) : '',
      amountCents: packet ? writeCents(packet.demandCents) : '',
      to: claim?.payerName ?? '',
      sentOn: localDay(now, zone),
      what: (claim?.demands.length ?? 0) === 0 ? 'demand' : 'supplement',
    };
  },
  occurredAt: () => null,
};

import type { FactKind } from '../../../../shared/submissions/kinds.ts';
import type { BodyOf } from '../../../../shared/submissions/submission.ts';

/** What is known when the events of a claim are told: what its packet demands, and the line of labor in it. */
export interface Known {
  readonly demandCents: number;
  readonly laborLineId: string | null;
  /** Tells how many days ago a day after the strike was, as `YYYY-MM-DD`. */
  readonly day: (afterStrike: number) => string;
  /** The id of the event told before of that kind. */
  readonly idOf: (kind: FactKind) => string;
}
export type Later = {
  readonly [K in FactKind]: {
    readonly kind: K;
    readonly after: number;
    readonly body: (known: Known) => BodyOf<K>;
  };
}[FactKind];

export const nothing: { note: null; exhibits: BodyOf<'claim-acknowledged'>['exhibits'] } = {
  note: null,
  exhibits: [],
};
export const event = <K extends FactKind>(kind: K, after: number, body: (known: Known) => BodyOf<K>): Later =>
  ({ kind, after, body }) as unknown as Later;

export const acknowledged = (after: number, reference: string | null): Later =>
  event('claim-acknowledged', after, ({ day }) => ({
    receivedOn: day(after),
    by: 'Property damage intake',
    reference,
    ...nothing,
  }));
export const paid = (after: number, share: number, more: Partial<BodyOf<'payment-received'>> = {}): Later =>
  event('payment-received', after, ({ demandCents, day }) => ({
    receivedOn: day(after),
    amountCents: Math.round(demandCents * share),
    how: 'cheque',
    from: null,
    reference: null,
    marked: 'not-marked',
    deposited: 'deposited',
    jointPayee: null,
    lines: [],
    ...nothing,
    ...more,
  }));
/** The hours of the crew are cut. */
export const shortOnHours = (after: number, share: number, words: string): Later =>
  event('payment-received', after, ({ demandCents, laborLineId, day }) => ({
    receivedOn: day(after),
    amountCents: Math.round(demandCents * share),
    how: 'cheque',
    from: null,
    reference: null,
    marked: 'part',
    deposited: 'deposited',
    jointPayee: null,
    lines: [
      {
        lineId: laborLineId,
        paidCents: 0,
        shortCents: demandCents - Math.round(demandCents * share),
        reason: 'hours',
        words,
      },
    ],
    ...nothing,
  }));
export const disputed = (
  after: number,
  reason: 'hours' | 'depreciation' | 'overhead',
  words: string,
): Later =>
  event('line-disputed', after, ({ demandCents, laborLineId, day }) => ({
    saidOn: day(after),
    revision: 1,
    lines: [
      {
        lineId: reason === 'hours' ? laborLineId : null,
        reason,
        disputedCents: Math.round(demandCents * 0.12),
        words,
      },
    ],
    ...nothing,
  }));
export const closed = (after: number, how: BodyOf<'claim-closed'>['how'], reason: string): Later =>
  event('claim-closed', after, ({ day }) => ({ closedOn: day(after), how, reason, ...nothing }));

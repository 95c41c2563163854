import { onceAcrossRecords } from '../costs/onceAcrossRecords.ts';
import { effectiveFacts, ofKind, type Effective } from '../submissions/effective.ts';
import { knownBy, notYet } from '../submissions/known.ts';
import type { Recorded } from '../submissions/recorded.ts';
import { withoutTrials } from '../submissions/trials.ts';

/** A part that a repair took from stock. */
export interface StockUse {
  readonly submissionId: string;
  /** When the repair says it was done (UTC instant); by a device whose clock runs far ahead, when it was recorded. */
  readonly at: string;
  readonly partNumber: string;
  readonly description: string;
  readonly quantity: number;
  /** The shelf or truck; null where the record does not say. */
  readonly location: string | null;
}

const at = (item: Effective): string =>
  notYet(item.fact.occurredAt, item) ? new Date(knownBy(item)).toISOString() : item.fact.occurredAt;

/**
 * What the repairs of one strike took from stock, as they stand after their corrections, trials left out. The same issue
 * slip in two records is one issue, as it is on the bill (`materialLines`).
 */
export function usesOf(recorded: readonly Recorded[]): StockUse[] {
  const { facts } = effectiveFacts(withoutTrials(recorded));
  const records = ofKind(facts, 'repair').map((item) => ({
    submissionId: item.fact.submissionId,
    items: item.fact.body.parts.flatMap(({ partNumber, description, quantity, source }) =>
      source.from === 'stock'
        ? [
            {
              slip: source.issueSlip,
              use: {
                submissionId: item.fact.submissionId,
                at: at(item),
                partNumber,
                description,
                quantity,
                location: source.location ?? null,
              },
            },
          ]
        : [],
    ),
  }));
  return onceAcrossRecords(records, ({ slip, use }) =>
    slip === null ? null : [slip, use.partNumber, use.quantity].join('\u0000'),
  ).items.map(({ item }) => item.use);
}

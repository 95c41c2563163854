import { datedEvents } from '../clocks/events.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';

/** Who is written to at the payer, and by which number it knows the claim. Personal: it is read, never kept computed. */
export interface ClaimContact {
  readonly payer: string | null;
  readonly address: string | null;
  readonly attention: string | null;
  /** The payer's own number: the last one that anybody gave. */
  readonly reference: string | null;
  /** The last one assigned; null before. */
  readonly adjuster:
    | (BodyOf<'adjuster-assigned'>['adjuster'] & { readonly company: string | null; readonly since: string })
    | null;
}

/** From the facts of one claim, read with their personal fields; null while its opening has not arrived. */
export function contactOf(facts: readonly Effective[]): ClaimContact | null {
  const opened = ofKind(facts, 'claim-opened')[0];
  if (!opened) return null;
  const { payer } = opened.fact.body;
  let { reference } = payer;
  let adjuster: ClaimContact['adjuster'] = null;
  for (const { fact } of datedEvents(facts, 'UTC')) {
    if (fact.kind === 'claim-acknowledged') reference = fact.body.reference ?? reference;
    if (fact.kind !== 'adjuster-assigned') continue;
    const { company, assignedOn } = fact.body;
    adjuster = { ...fact.body.adjuster, company, since: assignedOn };
    reference = adjuster.reference ?? reference;
  }
  const { name, address, attention } = payer;
  return { payer: name, address, attention, reference, adjuster };
}

/**
 * The opening with the number by which the driver's insurer knows the claim, once its answer or its adjuster gave one.
 * Of other payers the opening's own reference stays: it is a policy or a court case there.
 */
export function openedAsAnswered(
  opened: BodyOf<'claim-opened'>,
  facts: readonly Effective[],
): BodyOf<'claim-opened'> {
  if (opened.payerKind !== 'drivers-insurer') return opened;
  const reference = contactOf(facts)?.reference ?? opened.payer.reference;
  return { ...opened, payer: { ...opened.payer, reference } };
}

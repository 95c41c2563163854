import { ofKind, type Effective } from '../submissions/effective.ts';
import type { DispatchNotice } from './notice.ts';

const MINUTE_MS = 60_000;

/** When people recorded that they told dispatch, whatever form they said it on. */
export const toldByPeople = (facts: readonly Effective[]): string[] =>
  [
    ...ofKind(facts, 'strike'),
    ...ofKind(facts, 'outage'),
    ...ofKind(facts, 'out-of-service-notice'),
    ...ofKind(facts, 'return-to-service'),
  ].flatMap(({ fact }) => (fact.body.dispatch ? [fact.body.dispatch.at] : []));

/**
 * When a person told dispatch what a message says; null while nobody has. A message that was sent is not one that was
 * read, so only this ends the asking. People give times to the minute.
 */
export function confirmedAt(
  { confirmedFrom }: Pick<DispatchNotice, 'confirmedFrom'>,
  told: readonly string[],
): string | null {
  const from = Math.floor(Date.parse(confirmedFrom) / MINUTE_MS) * MINUTE_MS;
  return told.filter((at) => Date.parse(at) >= from).sort((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null;
}

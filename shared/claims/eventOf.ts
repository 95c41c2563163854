import type { DatedEvent } from '../clocks/events.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';

/** An event whose kind is known. */
export type Of<K extends FactKind> = DatedEvent & { readonly fact: { readonly body: BodyOf<K> } };
export const body = <K extends FactKind>(event: Of<K>): BodyOf<K> => event.fact.body;
export const eventsOf = <K extends FactKind>(events: readonly DatedEvent[], kind: K): Of<K>[] =>
  events.filter((event) => event.kind === kind) as unknown as Of<K>[];

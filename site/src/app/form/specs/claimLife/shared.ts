import { channels } from '../../../../../../shared/submissions/forms/claimLife/common.ts';
import { localDay } from '../../localTime.ts';
import { writeCents } from '../../number.ts';
import type { Leaf, List, Node, Section, Values } from '../../nodes.ts';
import type { FormContext, FormSpec } from '../../spec.ts';
import { fileFields, note } from '../parts.ts';

/** What the events of a claim's life have in common on the screen. */

/** The letter, the email or the picture of the cheque. */
export const exhibits: List = {
  type: 'list',
  name: 'exhibits',
  words: 'field.exhibits',
  as: 'photos',
  atMost: 20,
  item: fileFields(['document', 'other', 'overall', 'mid', 'close', 'scale']),
};

/** Words and papers, on every form of a claim's life. */
export const papers: Section = { type: 'section', id: 'life.papers', nodes: [exhibits] };
export const remarks: readonly Node[] = [note, papers];

export const day = (name: string): Leaf => ({ type: 'date', name, required: true });
export const how: Leaf = {
  type: 'choice',
  name: 'how',
  list: 'channel',
  choices: channels,
  required: true,
};
/** Who decided: whoever writes it, unless they say otherwise. */
export const decidedBy: Leaf = { type: 'person', name: 'decidedByWorkerId', required: true };

export const today = ({ now, zone }: FormContext): string => localDay(now, zone);

/** What is still owed as it would be typed; blank while nothing is. */
export const owed = ({ claim }: FormContext): string =>
  claim && claim.money.balanceCents > 0 ? writeCents(claim.money.balanceCents) : '';

/** What was paid too much as it would be typed; blank where nothing was. */
export const paidTooMuch = ({ claim }: FormContext): string =>
  claim && claim.money.overpaidCents > 0 ? writeCents(claim.money.overpaidCents) : '';

/** A form of the claim's life: its own fields, then note and papers. */
export const lifeSpec = (
  kind: FormSpec['kind'],
  nodes: readonly Node[],
  blank: (context: FormContext) => Values,
): FormSpec => ({ kind, nullable: [], nodes: [...nodes, ...remarks], blank, occurredAt: () => null });

/** The last event of a kind, so that an answer starts with what it most likely answers. */
export const lastOf = ({ claim }: FormContext, ...kinds: readonly string[]): string =>
  claim?.life.events.findLast(({ kind }) => kinds.includes(kind))?.submissionId ?? '';

import { mergeFields } from '../fields.ts';

/** What a letter after the packet may name beside what the packet's own letter may. Words: `letter.field.<field>`. */
export const laterFields = [
  'adjuster',
  'demandedOn',
  'daysSinceDemand',
  'asked',
  'paid',
  'balance',
  'writtenOff',
  'theirWords',
  'reply',
  'offer',
  'instalments',
  'supplement',
  'askedNow',
] as const;

export const laterMergeFields = [...mergeFields, ...laterFields] as const;
export type LaterField = (typeof laterMergeFields)[number];
export type LaterValues = Readonly<Record<LaterField, string | null>>;

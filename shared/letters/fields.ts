/**
 * What a letter's text may name, in the order in which it is offered. The meaning of each is said in words by
 * `letter.field.<field>`; its value comes from what the packet may name (`values.ts`), and from nothing else.
 */
export const mergeFields = [
  'claimNumber',
  'date',
  'utility',
  'utilityPhone',
  'utilityEmail',
  'payer',
  'payerAttention',
  'payerReference',
  'policy',
  'hydrant',
  'place',
  'struckAt',
  'returnedAt',
  'driverLeft',
  'policeReport',
  'policeAgency',
  'crashReport',
  'vehicle',
  'total',
  'demand',
  'otherDemands',
  'itemizedLoss',
  'remitTo',
  'signedBy',
  'deductible',
  'lessDeductible',
  'howToCheck',
  'revision',
  'changes',
] as const;
export type MergeField = (typeof mergeFields)[number];

/** Null: nobody recorded it, or it does not arise. */
export type MergeValues = Readonly<Record<MergeField, string | null>>;

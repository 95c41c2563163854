import type { UnitId } from '../../units/units.ts';
import type { SourceUnit } from '../values/quantity.ts';

/** What a column of a file may be mapped to. Most are fields of a hydrant; the last group only steers the import. */
export const importFields = [
  'hydrantId',
  'latitudeDeg',
  'longitudeDeg',
  'point',
  'place',
  'type',
  'service',
  'modelId',
  'installedOn',
  'lastInspectedOn',
  'outlets',
  'outletCount',
  'hoseOutletCount',
  'hoseOutletDiameterIn',
  'pumperOutletCount',
  'pumperOutletDiameterIn',
  'mainSizeIn',
  'lateralSizeIn',
  'lateralLengthFt',
  'buryDepthFt',
  'isolationValveId',
  'owner',
  'private',
  'ratedFlowGpm',
  // What the asset is, a mark that it is deleted, free remarks worth reading for a warning, and where its water comes from.
  'assetKind',
  'deleted',
  'remarks',
  'waterSource',
] as const;
export type ImportField = (typeof importFields)[number];
export const isImportField = (name: string): name is ImportField =>
  importFields.includes(name as ImportField);

export type FieldKind =
  | 'id'
  | 'coordinate'
  | 'point'
  | 'text'
  | 'type'
  | 'status'
  | 'private'
  | 'date'
  | 'quantity'
  | 'count'
  | 'outlets'
  | 'kind'
  | 'mark'
  | 'remarks'
  | 'source';

/** How a quantity is read: its unit here, what is plausible, and what a bare number could be. */
export interface QuantityRule {
  readonly target: UnitId;
  /** Plausible values in the target unit (common practice, no single source); others are doubted and left out. */
  readonly minimum: number;
  readonly maximum: number;
  /** The largest usual value in the target unit; a column's middle value is expected below it. */
  readonly usualMaximum: number;
  /** Units a bare number could be in, the usual one first. */
  readonly candidates: readonly SourceUnit[];
  /** Pipe and outlet sizes come in steps, which tells inches from millimetres and from tenths of an inch. */
  readonly inSteps: boolean;
}

export interface FieldRule {
  readonly kind: FieldKind;
  /** Several columns may serve: joined (a house number and a street) or tried in turn. */
  readonly several?: 'joined' | 'in-turn';
  readonly quantity?: QuantityRule;
}

const size = (minimum: number, maximum: number, usualMaximum: number): QuantityRule => ({
  target: 'in',
  minimum,
  maximum,
  usualMaximum,
  candidates: ['in', 'mm', 'tenth-in'],
  inSteps: true,
});
const outletSize = size(1, 6, 6);
const lateralLength: QuantityRule = {
  target: 'ft',
  minimum: 0,
  maximum: 2000,
  usualMaximum: 500,
  candidates: ['ft'],
  inSteps: false,
};
const buryDepth: QuantityRule = {
  target: 'ft',
  minimum: 0,
  maximum: 20,
  usualMaximum: 15,
  candidates: ['ft', 'in'],
  inSteps: false,
};
// Below 20 gpm no hydrant is rated: a garden hose gives more than half of that.
const flow: QuantityRule = {
  target: 'gpm',
  minimum: 20,
  maximum: 10_000,
  usualMaximum: 5000,
  candidates: ['gpm'],
  inSteps: false,
};

/** How each field is read; the names its columns go by are in `names.ts`. */
export const fieldRules: Readonly<Record<ImportField, FieldRule>> = {
  hydrantId: { kind: 'id' },
  latitudeDeg: { kind: 'coordinate' },
  longitudeDeg: { kind: 'coordinate' },
  point: { kind: 'point' },
  place: { kind: 'text', several: 'joined' },
  type: { kind: 'type', several: 'in-turn' },
  service: { kind: 'status', several: 'in-turn' },
  modelId: { kind: 'text' },
  installedOn: { kind: 'date' },
  lastInspectedOn: { kind: 'date' },
  outlets: { kind: 'outlets', several: 'in-turn' },
  outletCount: { kind: 'count' },
  hoseOutletCount: { kind: 'count' },
  hoseOutletDiameterIn: { kind: 'quantity', quantity: outletSize },
  pumperOutletCount: { kind: 'count' },
  pumperOutletDiameterIn: { kind: 'quantity', quantity: outletSize },
  mainSizeIn: { kind: 'quantity', quantity: size(1, 48, 24) },
  lateralSizeIn: { kind: 'quantity', quantity: size(1, 24, 12) },
  lateralLengthFt: { kind: 'quantity', quantity: lateralLength },
  buryDepthFt: { kind: 'quantity', quantity: buryDepth },
  isolationValveId: { kind: 'text' },
  owner: { kind: 'text' },
  private: { kind: 'private' },
  ratedFlowGpm: { kind: 'quantity', quantity: flow },
  assetKind: { kind: 'kind', several: 'in-turn' },
  deleted: { kind: 'mark', several: 'in-turn' },
  waterSource: { kind: 'source', several: 'in-turn' },
  remarks: { kind: 'remarks', several: 'in-turn' },
};

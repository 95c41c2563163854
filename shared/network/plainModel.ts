/** A network as plain data, as far as finding and cutting need it. */
export interface ModelNode {
  readonly nodeId: string;
  readonly kind: 'junction' | 'reservoir' | 'tank';
  /** In the model's own coordinates; null where the file has none. */
  readonly x: number | null;
  readonly y: number | null;
}

export interface ModelLink {
  readonly linkId: string;
  readonly from: string;
  readonly to: string;
}

export interface PlainModel {
  readonly nodes: readonly ModelNode[];
  readonly links: readonly ModelLink[];
}

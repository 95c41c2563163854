/** What EPANET itself doubts of a solution; its codes 1 to 6. Words: `network.warning.<code>`. */
export const networkWarnings = [
  'unbalanced',
  'unstable',
  'disconnected',
  'pumps',
  'valves',
  'negative-pressures',
] as const;
export type NetworkWarning = (typeof networkWarnings)[number];

/** A node of the model that was looked at. */
export interface SeenNode {
  readonly nodeId: string;
  readonly hydrantId: string | null;
  /** How far the node is from the hydrant's position, ft; null where it was named. */
  readonly distanceFt: number | null;
}

export interface WatchedNode extends SeenNode {
  readonly beforePsi: number;
  /** Null when the node is cut off from every source. */
  readonly afterPsi: number | null;
}

interface Answered {
  /** Hour of the model's clock at which it was solved; less than was asked where its run ends before. */
  readonly hour: number;
  readonly warnings: readonly NetworkWarning[];
}

export interface AvailableFlowAnswer extends Answered {
  readonly ask: 'available-flow';
  readonly at: SeenNode;
  /** Pressure with nothing but the model's own demands, psi. */
  readonly staticPsi: number;
  readonly residualPsi: number;
  /** Flow at that residual; 0 when the static is not above it. */
  readonly flowGpm: number;
  /** What the model leaves at the flow of the field test, psi; null when none was given. Below 0: it cannot give it. */
  readonly atTestFlowPsi: number | null;
  /** The lowest pressure at any junction with a demand while the hydrant flows, and how many are below that residual. */
  readonly lowest: { readonly nodeId: string; readonly psi: number; readonly belowResidual: number } | null;
  readonly watched: readonly WatchedNode[];
}

export interface ClosingAnswer extends Answered {
  readonly ask: 'closing';
  readonly closed: readonly string[];
  readonly watched: readonly WatchedNode[];
  /** Junctions with a demand that no source reaches any more. */
  readonly cutOffNodes: number;
}

export interface WaterBoundAnswer extends Answered {
  readonly ask: 'water-bound';
  readonly at: SeenNode;
  readonly staticPsi: number;
  /** Flow into the open air: no hydrant there gives more by this model, gpm. */
  readonly flowGpm: number;
}

export type NetworkAnswer = AvailableFlowAnswer | ClosingAnswer | WaterBoundAnswer;

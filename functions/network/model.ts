import type { NetworkWarning } from '../../shared/network/answer.ts';
import type { ModelLink, ModelNode, PlainModel } from '../../shared/network/plainModel.ts';
import type { ModelOutline, OutlineLink } from '../../shared/network/outline.ts';
import { codes, type Engine } from './engine.ts';

/** Head to pressure as EPANET has it, psi per foot of water, so that pressures agree with its own reports. */
const PSI_PER_FT = 0.4333;

const SECONDS_AN_HOUR = 3600;
/** Names that no file has, for what is added to a network. */
const FREE_END = '~free-end';
const OUTFLOW = '~outflow';
const CONSTANT = '~constant';
const TEST = '~test';

/** A pipe so short and wide that it loses nothing: the flow is then limited by the network alone. */
const noLoss = { lengthFt: 1, diameterIn: 120, roughness: 150, minorLossK: 0 } as const;

export interface Outlet {
  readonly lengthFt: number;
  readonly diameterIn: number;
  readonly roughness: number;
  readonly minorLossK: number;
}

/** An opened network in gpm, psi, feet and inches, whatever its file has. */
export interface Model {
  readonly plain: PlainModel;
  /** Prepares a way out of a node, shut until `flow` opens it, that ends at a pressure. Before `solveAt` only. */
  addOutlet(nodeId: string, endPsi: number, outlet?: Outlet): void;
  /** Runs the model's clock to an hour and solves it there; answers the hour that it reached. */
  solveAt(hour: number): number;
  pressurePsi(nodeId: string): number;
  /** Junctions with a demand, and the pressure at each, psi. */
  served(): { readonly nodeId: string; readonly psi: number }[];
  /** Opens the way out and solves again; answers what runs out, gpm. */
  openOutlet(): number;
  /** Shuts it, takes a stated flow from the node instead, and answers the pressure there, psi. */
  pressureAtFlow(nodeId: string, flowGpm: number): number;
  /** Closes links and solves again; answers those that the model's own controls opened at once. */
  closeLinks(linkIds: readonly string[]): string[];
  /** What a link is, in inches and feet. */
  linkFacts(linkId: string): Omit<OutlineLink, keyof ModelLink>;
  readonly headloss: ModelOutline['headloss'];
  /** What a junction takes at the hour that was solved, gpm. */
  demandGpm(nodeId: string): number;
  readonly takeWarnings: () => NetworkWarning[];
  close(): void;
}

function plainModel({ project }: Engine): PlainModel {
  const kinds = ['junction', 'reservoir', 'tank'] as const;
  const nodes: ModelNode[] = [];
  for (let index = 1; index <= project.getCount(codes.count.nodes); index++) {
    const kind = kinds[project.getNodeType(index)] ?? 'junction';
    nodes.push({ nodeId: project.getNodeId(index), kind, ...coordinates(index) });
  }
  const links: ModelLink[] = [];
  for (let index = 1; index <= project.getCount(codes.count.links); index++) {
    const { node1, node2 } = project.getLinkNodes(index);
    links.push({
      linkId: project.getLinkId(index),
      from: project.getNodeId(node1),
      to: project.getNodeId(node2),
    });
  }
  return { nodes, links };

  function coordinates(index: number): Pick<ModelNode, 'x' | 'y'> {
    try {
      const { x, y } = project.getCoordinates(index);
      return { x, y };
    } catch {
      // EPANET's answer for a node without a place on the map is an error.
      return { x: null, y: null };
    }
  }
}

const headlosses = ['hazen-williams', 'darcy-weisbach', 'chezy-manning'] as const;

function linkFacts({ project }: Engine, linkId: string): Omit<OutlineLink, keyof ModelLink> {
  const at = project.getLinkIndex(linkId);
  const type = project.getLinkType(at);
  const kind = type <= codes.linkType.pipe ? 'pipe' : type === codes.linkType.pump ? 'pump' : 'valve';
  return {
    kind,
    diameterIn: kind === 'pump' ? null : project.getLinkValue(at, codes.link.diameter),
    lengthFt: kind === 'pipe' ? project.getLinkValue(at, codes.link.length) : null,
    open: project.getLinkValue(at, codes.link.initialStatus) !== 0,
  };
}

/** Makes a model of an opened network. */
export function modelOf(engine: Engine): Model {
  const { project, takeWarnings } = engine;
  project.setStatusReport(0);
  const plain = plainModel(engine);
  // Everything else in the file is converted with the unit of flow; psi, feet and inches come with gpm.
  project.setFlowUnits(codes.gpm);
  project.addPattern(CONSTANT);
  const multiplier = project.getOption(codes.option.demandMultiplier);
  let outflow: number | null = null;

  const index = (nodeId: string): number => project.getNodeIndex(nodeId);
  const pressurePsi = (nodeId: string): number => {
    const node = index(nodeId);
    return (
      (project.getNodeValue(node, codes.node.head) - project.getNodeValue(node, codes.node.elevation)) *
      PSI_PER_FT
    );
  };
  const setOutlet = (status: 0 | 1): void => {
    if (outflow === null) throw new Error('no outlet was added');
    project.setLinkValue(outflow, codes.link.status, status);
    project.runH();
  };

  return {
    plain,
    addOutlet(nodeId, endPsi, outlet = noLoss) {
      const elevationFt = project.getNodeValue(index(nodeId), codes.node.elevation);
      const end = project.addNode(FREE_END, codes.nodeType.reservoir);
      project.setNodeValue(end, codes.node.elevation, elevationFt + endPsi / PSI_PER_FT);
      outflow = project.addLink(OUTFLOW, codes.linkType.pipe, nodeId, FREE_END);
      const { lengthFt, diameterIn, roughness, minorLossK } = outlet;
      project.setPipeData(outflow, lengthFt, diameterIn, roughness, minorLossK);
      project.setLinkValue(outflow, codes.link.initialStatus, 0);
    },
    solveAt(hour) {
      project.openH();
      project.initH(0);
      const until = hour * SECONDS_AN_HOUR;
      let time = project.runH();
      while (time < until && project.nextH() > 0) {
        // What was doubted of an hour that nobody asked about is no answer.
        takeWarnings();
        time = project.runH();
      }
      return time / SECONDS_AN_HOUR;
    },
    pressurePsi,
    served: () =>
      plain.nodes
        .filter(
          ({ kind, nodeId }) =>
            kind === 'junction' && project.getNodeValue(index(nodeId), codes.node.demand) > 0,
        )
        .map(({ nodeId }) => ({ nodeId, psi: pressurePsi(nodeId) })),
    openOutlet() {
      setOutlet(1);
      return project.getLinkValue(outflow ?? 0, codes.link.flow);
    },
    pressureAtFlow(nodeId, flowGpm) {
      // The model multiplies every demand, this one too.
      project.addDemand(index(nodeId), flowGpm / multiplier, CONSTANT, TEST);
      setOutlet(0);
      return pressurePsi(nodeId);
    },
    closeLinks(linkIds) {
      const links = linkIds.map((linkId) => ({ linkId, at: project.getLinkIndex(linkId) }));
      for (const { at } of links) project.setLinkValue(at, codes.link.status, 0);
      project.runH();
      return links
        .filter(({ at }) => project.getLinkValue(at, codes.link.status) !== 0)
        .map(({ linkId }) => linkId);
    },
    linkFacts: (linkId) => linkFacts(engine, linkId),
    headloss: headlosses[project.getOption(codes.option.headloss)] ?? 'hazen-williams',
    demandGpm: (nodeId) => project.getNodeValue(index(nodeId), codes.node.demand),
    takeWarnings,
    close() {
      project.closeH();
      project.close();
    },
  };
}

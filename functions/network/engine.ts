import * as epanetModule from 'epanet-js';
import type { NetworkWarning } from '../../shared/network/answer.ts';
import { networkWarnings } from '../../shared/network/answer.ts';

/** What is used of the package; its own types do not resolve in this project's module mode. */
export interface Project {
  open(input: string, report: string, binary: string): void;
  close(): void;
  setFlowUnits(units: number): void;
  setStatusReport(level: number): void;
  getCount(kind: number): number;
  getOption(option: number): number;
  getNodeId(index: number): string;
  getNodeIndex(id: string): number;
  getNodeType(index: number): number;
  getNodeValue(index: number, property: number): number;
  setNodeValue(index: number, property: number, value: number): void;
  getCoordinates(index: number): { readonly x: number; readonly y: number };
  addNode(id: string, type: number): number;
  addLink(id: string, type: number, from: string, to: string): number;
  addPattern(id: string): void;
  addDemand(index: number, demand: number, pattern: string, category: string): void;
  setPipeData(index: number, length: number, diameter: number, roughness: number, minorLoss: number): void;
  getLinkId(index: number): string;
  getLinkIndex(id: string): number;
  getLinkNodes(index: number): { readonly node1: number; readonly node2: number };
  getLinkType(index: number): number;
  getLinkValue(index: number, property: number): number;
  setLinkValue(index: number, property: number, value: number): void;
  openH(): void;
  initH(flag: number): void;
  runH(): number;
  nextH(): number;
  closeH(): void;
}
interface Workspace {
  loadModule(): Promise<void>;
  writeFile(name: string, content: string): void;
  readFile(name: string): string;
  getError(code: number): string;
}
interface Package {
  readonly Workspace: new () => Workspace;
  readonly Project: new (workspace: Workspace) => Project;
}
const epanet = epanetModule as unknown as Package;

/** Codes of EPANET's toolkit (epanet2_enums.h), as far as they are used. */
export const codes = {
  count: { nodes: 0, links: 2 },
  nodeType: { junction: 0, reservoir: 1, tank: 2 },
  node: { elevation: 0, demand: 9, head: 10, pressure: 11 },
  link: { diameter: 0, length: 1, flow: 8, status: 11, initialStatus: 4 },
  linkType: { checkValve: 0, pipe: 1, pump: 2 },
  option: { demandMultiplier: 4, headloss: 7 },
  gpm: 1,
} as const;

/** EPANET's own refusal: its number, its sentence, and what its report says of the file. */
export class EngineError extends Error {
  readonly code: number;
  readonly report: string;
  constructor(code: number, message: string, report: string) {
    super(message);
    this.name = 'EngineError';
    this.code = code;
    this.report = report;
  }
}

const REPORT = 'report.rpt';

export interface Engine {
  readonly project: Project;
  /** What EPANET doubted since the last call. */
  readonly takeWarnings: () => NetworkWarning[];
}

/**
 * Opens a network in a workspace of its own. The files are in memory: whatever a file names, nothing outside is read.
 *
 * @throws EngineError when EPANET refuses the file
 */
export async function openEngine(inp: string): Promise<Engine> {
  const workspace = new epanet.Workspace();
  await workspace.loadModule();
  workspace.writeFile('network.inp', inp);
  const doubts = new Set<NetworkWarning>();
  // The package prints warnings and throws the number away; both are wanted here.
  const project = Object.assign(new epanet.Project(workspace), {
    _checkError: (code: number): void => {
      if (code === 0) return;
      const warning = networkWarnings[code - 1];
      if (warning) doubts.add(warning);
      else if (code >= 100) throw new EngineError(code, workspace.getError(code), '');
    },
  });
  try {
    project.open('network.inp', REPORT, 'out.bin');
  } catch (error) {
    throw withReport(error, project, workspace);
  }
  return {
    project,
    takeWarnings: () => {
      const taken = networkWarnings.filter((warning) => doubts.has(warning));
      doubts.clear();
      return taken;
    },
  };
}

/** EPANET says "errors in the file" and writes which into its report, once it is closed. */
function withReport(error: unknown, project: Project, workspace: Workspace): unknown {
  if (!(error instanceof EngineError)) return error;
  try {
    project.close();
  } catch {
    // It was never open; the report is what matters.
  }
  try {
    return new EngineError(error.code, error.message, workspace.readFile(REPORT));
  } catch {
    return error;
  }
}

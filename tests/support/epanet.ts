import * as epanetModule from 'epanet-js';

/** What the tests use of the package; its own types do not resolve in this project's module mode. */
export interface Project {
  init(report: string, binary: string, flowUnits: number, headloss: number): void;
  setOption(option: number, value: number): void;
  addNode(id: string, type: number): number;
  setNodeValue(index: number, property: number, value: number): void;
  getNodeValue(index: number, property: number): number;
  setJunctionData(index: number, elevation: number, demand: number, pattern: string): void;
  addLink(id: string, type: number, from: string, to: string): number;
  setPipeData(index: number, length: number, diameter: number, roughness: number, minorLoss: number): void;
  getLinkValue(index: number, property: number): number;
  solveH(): void;
  openH(): void;
  initH(flag: number): void;
  runH(): number;
  closeH(): void;
  close(): void;
}
interface Workspace {
  loadModule(): Promise<void>;
}
const epanet = epanetModule as unknown as {
  readonly Workspace: new () => Workspace;
  readonly Project: new (workspace: Workspace) => Project;
};

/** Loads the engine; what comes back makes empty networks in gpm with Hazen-Williams. */
export async function loadEpanet(): Promise<() => Project> {
  const workspace = new epanet.Workspace();
  await workspace.loadModule();
  return () => {
    const project = new epanet.Project(workspace);
    project.init('report.rpt', 'out.bin', 1, 0);
    project.setOption(0, 200);
    return project;
  };
}

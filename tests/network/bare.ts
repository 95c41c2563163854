import * as epanetModule from 'epanet-js';

/** The library alone, with none of our code between: what a person with the toolkit's manual would write. */
interface BareProject {
  open(inp: string, report: string, binary: string): void;
  solveH(): void;
  close(): void;
  getNodeIndex(id: string): number;
  getLinkIndex(id: string): number;
  getLinkValue(index: number, property: number): number;
  getNodeValue(index: number, property: number): number;
  setLinkValue(index: number, property: number, value: number): void;
  addDemand(index: number, demand: number, pattern: string, category: string): void;
}
const { Workspace, Project } = epanetModule as unknown as {
  readonly Workspace: new () => { loadModule(): Promise<void>; writeFile(name: string, text: string): void };
  readonly Project: new (workspace: object) => BareProject;
};

export interface BareQuestion {
  /** Links shut from the start (EN_INITSTATUS is property 4 of a link). */
  readonly closed?: readonly string[];
  /** Taken at a node beside its own demand, gpm. */
  readonly take?: { readonly nodeId: string; readonly gpm: number };
}

async function opened(inp: string): Promise<BareProject> {
  const workspace = new Workspace();
  await workspace.loadModule();
  workspace.writeFile('n.inp', inp);
  const project = new Project(workspace);
  project.open('n.inp', 'n.rpt', 'n.out');
  return project;
}

/** Flow in a link, gpm (EN_FLOW is property 8 of a link). */
export async function bareFlowGpm(inp: string, linkId: string): Promise<number> {
  const project = await opened(inp);
  project.solveH();
  const flowGpm = project.getLinkValue(project.getLinkIndex(linkId), 8);
  project.close();
  return flowGpm;
}

/** Pressures by node, psi (EN_PRESSURE is property 11 of a node), at hour 0 of a file in gpm without a demand multiplier. */
export async function barePressures(
  inp: string,
  nodeIds: readonly string[],
  { closed = [], take }: BareQuestion = {},
): Promise<Record<string, number>> {
  const project = await opened(inp);
  for (const linkId of closed) project.setLinkValue(project.getLinkIndex(linkId), 4, 0);
  if (take) project.addDemand(project.getNodeIndex(take.nodeId), take.gpm, '', '');
  project.solveH();
  const read = nodeIds.map((id) => [id, project.getNodeValue(project.getNodeIndex(id), 11)] as const);
  project.close();
  return Object.fromEntries(read);
}

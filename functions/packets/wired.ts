import { v7 } from 'uuid';
import {
  appendDeps,
  environment,
  evidenceStore,
  httpDeps,
  inventoryStore,
  packetSigner,
  tables,
} from '../wiring.ts';
import type { PacketsDeps } from './deps.ts';

/** What the packets' functions stand on, apart from how a job is started. */
export const packetsDeps = async (): Promise<Omit<PacketsDeps, 'startJob'>> => ({
  ...httpDeps(),
  ...appendDeps(),
  settings: environment().utility,
  projections: tables().projections,
  inventory: await inventoryStore(),
  evidence: await evidenceStore(),
  signer: await packetSigner(),
  newId: () => v7(),
});

import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { HttpDeps } from '../http/app.ts';
import type { EvidenceStore } from '../stores/evidence/evidence.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { PacketSigner } from '../stores/signing/packetSigner.ts';
import type { AppendDeps } from '../submissions/append.ts';
import type { PacketOrder, Progress } from './order.ts';

export interface PacketsDeps extends HttpDeps, AppendDeps {
  readonly settings: UtilitySettings;
  readonly projections: ProjectionStore;
  readonly inventory: Pick<InventoryStore, 'hydrant' | 'current'>;
  readonly evidence: Pick<EvidenceStore, 'get' | 'has' | 'arrivedAt' | 'put' | 'downloadUrl' | 'copies'>;
  readonly signer: PacketSigner;
  /** Has a packet built outside of the request: here in the same process, on AWS by a function of its own. */
  readonly startJob: (order: PacketOrder) => Promise<void>;
  /** Told how far a packet is. */
  readonly progress?: Progress;
  /** Makes the id of a fact that the server writes; an argument so that tests hold it. */
  readonly newId: () => string;
}

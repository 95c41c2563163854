import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { HttpDeps } from '../http/app.ts';
import type { EvidenceStore } from '../stores/evidence/evidence.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { AppendDeps } from '../submissions/append.ts';

export interface PacketsDeps extends HttpDeps, AppendDeps {
  readonly settings: UtilitySettings;
  readonly projections: ProjectionStore;
  readonly inventory: Pick<InventoryStore, 'hydrant'>;
  readonly evidence: Pick<EvidenceStore, 'get' | 'has' | 'put' | 'downloadUrl'>;
  /** Makes the id of a fact that the server writes; an argument so that tests hold it. */
  readonly newId: () => string;
}

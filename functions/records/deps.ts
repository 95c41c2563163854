import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { HttpDeps } from '../http/app.ts';
import type { EvidenceStore } from '../stores/evidence/evidence.ts';
import type { ExhibitIndex } from '../stores/evidence/exhibitIndex.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { ProjectionStore } from '../stores/projections/projections.ts';
import type { CurrentState } from './current.ts';

export interface RecordsDeps extends HttpDeps {
  readonly settings: UtilitySettings;
  /** Where a browser signs people in; left out: they are given links. */
  readonly signIn?: { readonly page: string; readonly clientId: string };
  readonly ledger: Ledger;
  readonly current: CurrentState;
  readonly projections: ProjectionStore;
  readonly inventory: InventoryStore;
  readonly evidence: EvidenceStore;
  readonly exhibits: ExhibitIndex;
}

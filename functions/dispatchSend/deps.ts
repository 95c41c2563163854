import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { CurrentState } from '../records/current.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { Notices } from '../stores/outbox/notices.ts';

/** What making a message stands on. */
export interface NoticeDeps {
  readonly settings: UtilitySettings;
  readonly notices: Notices;
  readonly current: CurrentState;
  readonly ledger: Ledger;
  readonly inventory: Pick<InventoryStore, 'current'>;
  readonly now: () => Date;
  /** Waits before another try; an argument so that tests hold the time. */
  readonly pause?: (milliseconds: number) => Promise<void>;
}

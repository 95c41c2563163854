import type { NetworkQuestion } from '../../shared/network/question.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { HttpDeps } from '../http/app.ts';
import type { CurrentState } from '../records/current.ts';
import type { InventoryStore } from '../stores/inventory/inventory.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { NetworkModels } from '../stores/network/networkModels.ts';
import type { NetworkReply } from './worker.ts';

export interface NetworkDeps extends HttpDeps {
  readonly settings: UtilitySettings;
  readonly ledger: Ledger;
  readonly current: CurrentState;
  readonly inventory: InventoryStore;
  readonly models: NetworkModels;
  /** Answers within a time limit, whatever the file does. */
  readonly solve: (inp: string, question: NetworkQuestion) => Promise<NetworkReply>;
}

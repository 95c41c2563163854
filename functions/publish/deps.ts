import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { PublishedStore } from '../stores/published/published.ts';
import type { PublishDeps } from './publish.ts';
import type { SiteRenderer } from './renderer.ts';
import { readSources, stillRecorded, type SourceDeps } from './sources.ts';

/** A publisher on the utility's stores. */
export function publishDeps(
  stores: SourceDeps,
  { settings, store, renderer }: { settings: UtilitySettings; store: PublishedStore; renderer: SiteRenderer },
): PublishDeps {
  return {
    settings,
    store,
    renderer,
    readSources: (checkedAt) => readSources(stores, checkedAt),
    stillRecorded: (vanished) => stillRecorded(stores.ledger, vanished),
  };
}

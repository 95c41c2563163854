import { environmentNames } from '../../shared/deployment/environment.ts';
import { logLine } from '../log/log.ts';
import { openPublishedStore } from '../stores/published/openPublished.ts';
import { environment, inventoryStore, layerStore, tables } from '../wiring.ts';
import { publishDeps } from './deps.ts';
import type { PublishDeps } from './publish.ts';
import { loadRenderer } from './renderer.ts';
import { publishAndReport } from './report.ts';
import { wordless } from '../log/wordless.ts';

let opened: Promise<PublishDeps> | undefined;

async function open(): Promise<PublishDeps> {
  const { utility: settings, publishedUrl } = environment();
  return publishDeps(
    { ...tables(), inventory: await inventoryStore(), layers: await layerStore() },
    {
      settings,
      store: openPublishedStore(publishedUrl),
      renderer: await loadRenderer(process.env[environmentNames.siteFolder]),
    },
  );
}

/**
 * Publishes the current state, whatever woke it: the stream of the projections table (something changed) or the
 * schedule (nothing changed, and the page would grow old). A stream's records are not read, because a publication
 * shows the whole state. Throws on failure, so that the stream is tried again and the alarm on errors sees it.
 */
export const handler = wordless(async (): Promise<void> => {
  // A failed start is not kept: the next event starts anew.
  opened ??= open().catch((error: unknown) => {
    opened = undefined;
    throw error;
  });
  await publishAndReport(await opened, new Date(), logLine);
});

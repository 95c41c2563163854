import type { PublishDeps } from '../../functions/publish/publish.ts';
import type { SiteRenderer } from '../../functions/publish/renderer.ts';
import type { PublishedStore } from '../../functions/stores/published/published.ts';
import type { PublicSources } from '../../shared/public/build.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';

/** Pages of nothing but what every page must have, for tests of what is published beside them. */
const barePages: SiteRenderer = {
  async render(_path, { edition: { snapshot } }) {
    const { checkedAt, relyUntil, utility } = snapshot;
    const times = [checkedAt, relyUntil].map((at) => `<time datetime="${at}">${at}</time>`).join('');
    return `<a href="tel:${utility.emergencyPhone.replace(/[^+\d]/g, '')}">call</a>${times}`;
  },
  asset: async () => new Uint8Array(),
};

/** A publisher of given sources. */
export const aPublisher = (
  store: PublishedStore,
  sources: PublicSources,
  settings: UtilitySettings,
): PublishDeps => ({
  settings,
  store,
  renderer: barePages,
  readSources: async () => sources,
  stillRecorded: async () => true,
});

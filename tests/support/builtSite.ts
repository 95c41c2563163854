import { loadRenderer, type SiteRenderer } from '../../functions/publish/renderer.ts';
import { buildSite, siteIsCurrent } from '../../infra/local/buildSite.ts';
import { environmentNames } from '../../shared/deployment/environment.ts';
import { oneAtATime } from './oneAtATime.ts';

/** Builds the site if its sources changed since, so that a test never looks at an older one. */
export async function ensureBuilt(): Promise<void> {
  await oneAtATime('site', async () => {
    if (!(await siteIsCurrent())) await buildSite();
  });
}

/** The renderer of the built site, or of the one built already that `SITE_FOLDER` names. */
export async function builtRenderer(): Promise<SiteRenderer> {
  const folder = process.env[environmentNames.siteFolder];
  if (folder === undefined) await ensureBuilt();
  return loadRenderer(folder);
}

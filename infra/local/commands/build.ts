import { builtSite, buildSite, siteIsCurrent } from '../buildSite.ts';
import { command, tell } from '../terminal.ts';

/** `npm run build`: builds the site, unless it is built from exactly these sources. */
await command(async () => {
  const current = await siteIsCurrent();
  if (!current) await buildSite();
  tell(current ? 'command.site-current' : 'command.site-built', { folder: builtSite.client });
});

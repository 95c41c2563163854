import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { PublicArea } from '../../shared/public/areas.ts';
import type { PublicYear } from '../../shared/yearly/schema.ts';
import type { PublicEdition } from '../../shared/public/edition.ts';
import type { PublicStation } from '../../shared/stations/page.ts';
import type { PublicHydrantPage } from '../../shared/public/hydrantPage.ts';
import { OperatorFault } from '../log/wordless.ts';

/** The built site: its pages as a program, its assets as files. */
export interface SiteRenderer {
  /** The HTML of a page by its path, e.g. `/es/how-to-read/`. @throws Error when the page does not render. */
  render(path: string, content: PageContent): Promise<string>;
  /** An asset by its path, e.g. `/_assets/site.css`. @throws Error when the build has none. */
  asset(path: string): Promise<Uint8Array>;
}

export interface PageContent {
  readonly edition: PublicEdition;
  /** On a hydrant's page only; null when its records were withdrawn. */
  readonly hydrant?: PublicHydrantPage | null;
  /** On a station's page only. */
  readonly station?: PublicStation;
  /** On the page of one year only. */
  readonly year?: PublicYear;
  /** On a page that lists one area only. */
  readonly area?: { readonly area: PublicArea; readonly part: number };
  /** On a page of the list of those not re-tested only, from 1. */
  readonly notRetestedPart?: number;
}

/** What the site's server bundle exports; see site/src/render/entry.ts. */
interface ServerBundle {
  createApp(): {
    render(request: Request, options: { locals: PageContent }): Promise<Response>;
  };
}

/** Where `npm run build` leaves the site; a deployed function has it elsewhere and says so. */
const builtSite = (): string => fileURLToPath(new URL('../../site/dist/', import.meta.url));

/**
 * Loads the built site from a folder that holds `server/` and `client/`. The bundle needs nothing beside it, so the
 * folder can be copied into a function as it is.
 *
 * @throws Error that says to build, when there is no bundle.
 */
export async function loadRenderer(folder: string = builtSite()): Promise<SiteRenderer> {
  const entry = pathToFileURL(join(folder, 'server', 'entry.mjs')).href;
  let bundle: ServerBundle;
  try {
    bundle = (await import(entry)) as ServerBundle;
  } catch (error) {
    throw new OperatorFault(`the site's bundle does not load from ${folder}: run "npm run build"`, {
      cause: error,
    });
  }
  const app = bundle.createApp();
  return {
    async render(path, content) {
      const response = await app.render(new Request(`http://site.invalid${path}`), { locals: content });
      const html = await response.text();
      // The page for a missing address is asked for by its own address and answers 404 by right.
      const expected = path === '/404' ? 404 : 200;
      if (response.status !== expected) throw new Error(`${path} rendered with status ${response.status}`);
      return html;
    },
    asset: (path) => readFile(join(folder, 'client', path)),
  };
}

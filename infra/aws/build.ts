import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Tags, Validations, type App } from 'aws-cdk-lib';
import { environmentNames } from '../../shared/deployment/environment.ts';
import { DataStack } from './data/dataStack.ts';
import { HouseRules } from './rules/houseRules.ts';
import { ServiceStack } from './service/serviceStack.ts';
import type { DeploymentSettings } from './settings.ts';

export interface BuildOptions {
  readonly app: App;
  readonly settings: DeploymentSettings;
  readonly root: string;
  readonly functionsFolder: string;
  /** The built site's folder. */
  readonly site: string;
}

/** The two stacks of one stage. Needs no account: what depends on one is filled in by CloudFormation. */
export function build({ app, settings, root, functionsFolder, site }: BuildOptions): {
  data: DataStack;
  service: ServiceStack;
} {
  const name = (what: string): string => `Hydrants-${settings.stage}-${what}`;
  const data = new DataStack(app, name('Data'), settings, {
    description: `Facts, evidence, inventory and people of ${settings.utility.name} (${settings.stage})`,
  });
  const service = new ServiceStack(app, name('Service'), {
    description: `Handlers, API and public pages of ${settings.utility.name} (${settings.stage})`,
    data,
    settings,
    root,
    functionsFolder,
    site,
    inject: writeInjected(app.outdir, settings),
  });
  Tags.of(app).add('application', 'hydrant-strike-ledger');
  Tags.of(app).add('stage', settings.stage);
  Tags.of(app).add('utility', tagText(settings.utility.name));
  Validations.of(app).addPlugins(new HouseRules());
  return { data, service };
}

/** What a tag's value may hold, and no more than 256 of it (IAM's rule, the strictest of the services). */
const tagText = (text: string): string => text.replaceAll(/[^\p{L}\p{Z}\p{N}_.:/=+\-@]/gu, ' ').slice(0, 256);

/** Lambda's environment holds 4 KB; the roll of people alone may be fifty times that, so it travels with the code. */
function writeInjected(folder: string, { utility }: DeploymentSettings): string {
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'utility-settings.mjs');
  writeFileSync(
    file,
    `process.env[${JSON.stringify(environmentNames.utility)}] ??= ${JSON.stringify(JSON.stringify(utility))};\n`,
  );
  return file;
}

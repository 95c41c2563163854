import { isAbsolute, join } from 'node:path';
import { App } from 'aws-cdk-lib';
import { build } from './build.ts';
import { readDeploymentSettings, SettingsRefused } from './settings.ts';

/** The CDK app: `npm run synth`, `npx cdk deploy`. Settings come from `-c settings=FILE` or `infra/aws/settings.json`. */
const root = join(import.meta.dirname, '..', '..');
const app = new App({ analyticsReporting: false });
const named = app.node.tryGetContext('settings') as unknown;
const file = typeof named === 'string' ? named : join('infra', 'aws', 'settings.json');

try {
  build({
    app,
    settings: readDeploymentSettings(isAbsolute(file) ? file : join(root, file)),
    root,
    functionsFolder: join(root, 'functions'),
    site: join(root, 'site', 'dist'),
  });
  app.synth();
} catch (error) {
  if (!(error instanceof SettingsRefused)) throw error;
  console.error(error.message);
  process.exitCode = 1;
}

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { App } from 'aws-cdk-lib';
import { Template } from 'aws-cdk-lib/assertions';
import { build } from '../../../infra/aws/build.ts';
import { judge, type Judged } from '../../../infra/aws/rules/houseRules.ts';
import { permissions } from '../../../infra/aws/permissions.ts';
import { readDeploymentSettings, type DeploymentSettings } from '../../../infra/aws/settings.ts';

const repository = join(import.meta.dirname, '..', '..', '..');
export const exampleFile = join(repository, 'infra', 'aws', 'settings.example.json');
export const example = (): DeploymentSettings => readDeploymentSettings(exampleFile);

/**
 * The two templates. Handlers are stand-ins and are not bundled, because only their wiring is asserted here; that the
 * real ones bundle is `npm run synth`'s to show.
 */
export function synthesise(settings: DeploymentSettings = example()): {
  data: Template;
  service: Template;
  /** What the rules of cdk-nag find, with our explanations. */
  judged: Judged;
} {
  const root = mkdtempSync(join(tmpdir(), 'synth-'));
  try {
    const functionsFolder = join(root, 'functions');
    for (const name of Object.keys(permissions)) {
      mkdirSync(join(functionsFolder, name), { recursive: true });
      writeFileSync(
        join(functionsFolder, name, 'handler.ts'),
        'export const handler = async () => undefined;\n',
      );
    }
    const site = join(root, 'site');
    mkdirSync(join(site, 'client'), { recursive: true });
    writeFileSync(join(site, 'client', 'index.html'), '<!doctype html>');
    writeFileSync(join(root, 'package-lock.json'), '{}');
    const { context } = JSON.parse(readFileSync(join(repository, 'cdk.json'), 'utf8')) as { context: object };
    const app = new App({
      analyticsReporting: false,
      autoSynth: false,
      outdir: join(root, 'cdk.out'),
      context: { ...context, 'aws:cdk:bundling-stacks': [] },
    });
    const { data, service } = build({ app, settings, root, functionsFolder, site });
    const templates = { data: Template.fromStack(data), service: Template.fromStack(service) };
    return { ...templates, judged: judge(app) };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}

export interface Resource {
  readonly Type: string;
  readonly Properties: Record<string, any>;
  readonly [attribute: string]: unknown;
}
export const resourcesOf = (template: Template): Record<string, Resource> =>
  (template.toJSON() as { Resources: Record<string, Resource> }).Resources;

import { join, resolve } from 'node:path';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { utilitySettings, type UtilitySettings } from '../../shared/utility/settings.ts';
import { projectRoot } from './buildSite.ts';
import { RefusedStart } from './refusedStart.ts';

type Variables = Readonly<Record<string, string | undefined>>;

/** Paths on the command line are meant from where the person stands; npm runs a script in the project's folder. */
export const fromCaller = (path: string, variables: Variables = process.env): string =>
  resolve(variables['INIT_CWD'] ?? '.', path);

/** The data folder: `DATA_DIR`, from where the command was called; else `.data` of the project. */
export function dataDir(variables: Variables): string {
  const given = variables['DATA_DIR'];
  return given === undefined || given === '' ? join(projectRoot, '.data') : fromCaller(given, variables);
}

export function portOf(variables: Variables): number {
  const given = variables['PORT'] ?? '';
  if (given === '') return 4780;
  const port = Number(given);
  if (!/^\d{1,5}$/.test(given) || port < 1 || port > 65535)
    throw new RefusedStart('command.port-wrong', { port: given });
  return port;
}

/** Somebody's own utility in `UTILITY_SETTINGS` (JSON), or null for the demo's. */
export function ownSettings(variables: Variables): UtilitySettings | null {
  const given = variables['UTILITY_SETTINGS'];
  if (given === undefined || given === '') return null;
  let value: unknown;
  try {
    value = JSON.parse(given);
  } catch {
    throw new RefusedStart('command.settings-not-json');
  }
  const parsed = utilitySettings.safeParse(value, { reportInput: true });
  if (parsed.success) return parsed.data;
  const reason = problemsFromZod(parsed.error.issues)
    .map(({ path }) => path)
    .join(', ');
  throw new RefusedStart('command.settings-wrong', { reason });
}

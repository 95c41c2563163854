import type { Places } from '../../infra/packages/bundled.ts';
import { licenseOf, obligations } from '../../infra/packages/licenses.ts';
import { packageAt, type LockedPackage } from '../../infra/packages/lockFile.ts';

type Bundled = ReadonlyMap<string, Places>;
type Lock = ReadonlyMap<string, LockedPackage>;

/** Where a package is found at run time. Which functions, the bill of materials says: here it would change too often. */
const placesIn = ({ functions, browser, renderer }: Places): string =>
  [
    ...(functions.length > 0 ? ['functions'] : []),
    ...(browser ? ['browser'] : []),
    ...(renderer ? ['page renderer'] : []),
  ].join(', ');

/** Every package of which code is deployed, with its license and where it is. */
export function licenseTable(bundled: Bundled, lock: Lock): string {
  const rows = [...bundled].map(([name, places]) => {
    const locked = lock.get(`node_modules/${name}`);
    const license = locked ? licenseOf(name, locked) : null;
    return `| ${name} | ${locked?.version ?? '?'} | ${license ?? '?'} | ${placesIn(places)} |`;
  });
  return ['| package | version | license | in |', '|---|---|---|---|', ...rows].join('\n');
}

/** What only builds or deploys: how many packages under which license. */
export function buildOnlyTable(bundled: Bundled, lock: Lock): string {
  const counts = new Map<string, number>();
  for (const [key, locked] of lock) {
    const name = packageAt(key);
    if (locked.dev || name === null || bundled.has(name)) continue;
    const license = licenseOf(name, locked) ?? '?';
    counts.set(license, (counts.get(license) ?? 0) + 1);
  }
  const rows = [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([license, count]) => `| ${license} | ${count} |`);
  return ['| license | packages |', '|---|---|', ...rows].join('\n');
}

export const obligationList = (): string =>
  obligations.map(({ name, licenses, met }) => `- **${name}** (${licenses[0] ?? ''}). ${met}`).join('\n');

import type { Places } from './bundled.ts';

interface Property {
  readonly name: string;
  readonly value: string;
}
export interface Component {
  readonly 'bom-ref'?: string;
  readonly type: string;
  readonly name: string;
  readonly version?: string;
  readonly group?: string;
  readonly properties?: readonly Property[];
  readonly components?: readonly Component[];
  readonly [field: string]: unknown;
}
/** As much of a CycloneDX bill of materials as is read here. */
export interface Sbom {
  readonly bomFormat: 'CycloneDX';
  readonly specVersion: string;
  readonly metadata: { readonly component: Component; readonly [field: string]: unknown };
  readonly components: readonly Component[];
  /** By `bom-ref`. */
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn?: readonly string[] }[];
  readonly [field: string]: unknown;
}

/** Our own properties; a name of one's own begins with a namespace (CycloneDX, "Property taxonomy"). */
const IN = 'hydrant-strike-ledger:in';

/** Parts that a package carries compiled, and no list of npm's knows: package → part → version. */
export type CompiledParts = Readonly<Record<string, Readonly<Record<string, string>>>>;

export interface Known {
  readonly product: { readonly name: string; readonly version: string };
  /** Whether a package of this name and version is installed for more than tests. */
  readonly isProduction: (name: string, version: string) => boolean;
  readonly places: ReadonlyMap<string, Places>;
  readonly compiled: CompiledParts;
}

/**
 * npm's own bill of everything, without what is only for tests (npm's `--omit dev` also leaves out what tests and the
 * product share), and with what npm cannot know: where each package is deployed (`functions:<name>`, `browser`,
 * `renderer`, or `build` for one of which nothing is), what is compiled into some of them, and the product's name, for
 * which npm takes the folder's.
 */
export function completed(npms: Sbom, { product, isProduction, places, compiled }: Known): Sbom {
  const kept = npms.components.filter(({ name, version = '' }) => isProduction(name, version));
  const component = { ...npms.metadata.component, ...product };
  const refs = new Set([component, ...kept].map((one) => one['bom-ref']));
  return {
    ...npms,
    metadata: { ...npms.metadata, component },
    components: kept.map((one) => {
      const parts = Object.entries(compiled[one.name] ?? {}).map(([name, version]) => ({
        type: 'library',
        'bom-ref': `${one['bom-ref'] ?? one.name}#${name}`,
        name,
        version,
      }));
      return {
        ...one,
        properties: [...(one.properties ?? []), ...placesOf(places.get(one.name))],
        ...(parts.length > 0 ? { components: parts } : {}),
      };
    }),
    dependencies: npms.dependencies
      .filter(({ ref }) => refs.has(ref))
      .map(({ ref, dependsOn = [] }) => ({ ref, dependsOn: dependsOn.filter((one) => refs.has(one)) })),
  };
}

function placesOf(places: Places | undefined): Property[] {
  if (!places) return [{ name: IN, value: 'build' }];
  const { functions, browser, renderer } = places;
  return [
    ...functions.map((name) => `functions:${name}`),
    ...(browser ? ['browser'] : []),
    ...(renderer ? ['renderer'] : []),
  ].map((value) => ({ name: IN, value }));
}

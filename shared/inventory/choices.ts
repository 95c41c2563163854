import type { ImportField } from './mapping/fields.ts';
import type { DateOrder } from './values/date.ts';
import type { SourceUnit } from './values/quantity.ts';

/** Doubts whose value a person may decide to take after all (`--accept`). */
export const acceptable = ['mixed-units', 'swapped-axes'] as const;
export type Acceptable = (typeof acceptable)[number];

/** What the person who runs the import states. Everything else is read from the file or asked for. */
export interface ImportChoices {
  /** Columns per field; an empty list leaves the field out. */
  readonly map: Readonly<Partial<Record<ImportField, readonly string[]>>>;
  /** The unit of a field's bare numbers. */
  readonly units: Readonly<Partial<Record<ImportField, SourceUnit>>>;
  /** `EPSG:2263` or a proj4 definition; null when the file is in degrees or states its own. */
  readonly crs: string | null;
  /** What `04/05/2021` means where nothing in its column shows it. */
  readonly dateOrder: DateOrder | null;
  readonly accept: ReadonlySet<Acceptable>;
  /** ISO date: installs after it are in the future. An argument, because the domain has no clock. */
  readonly today: string;
}

export const noChoices = (today: string): ImportChoices => ({
  map: {},
  units: {},
  crs: null,
  dateOrder: null,
  accept: new Set(),
  today,
});

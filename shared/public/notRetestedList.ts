import { LIST_MOST } from './areas.ts';
import type { PublicSnapshot } from './snapshot.ts';

/** Of those back in service and not re-tested, the first page names so many, the latest; all stand in a list of their own. */
export const NOT_RETESTED_FIRST = 20;

type NotRetested = PublicSnapshot['notRetested'];

/** How many pages that list has; none while the first page names them all. */
export const notRetestedParts = ({ length }: NotRetested): number =>
  length <= NOT_RETESTED_FIRST ? 0 : Math.ceil(length / LIST_MOST);

/** What one page of it names, from 1. */
export const notRetestedPart = (all: NotRetested, part: number): NotRetested =>
  all.slice((part - 1) * LIST_MOST, part * LIST_MOST);

/** Address of a page of it within a language: `not-retested/`, `not-retested/2/`. */
export const notRetestedPath = (part = 1): string => `not-retested/${part === 1 ? '' : `${String(part)}/`}`;

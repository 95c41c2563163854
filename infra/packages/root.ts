import { join } from 'node:path';

/** The repository's root. */
export const root = join(import.meta.dirname, '..', '..');

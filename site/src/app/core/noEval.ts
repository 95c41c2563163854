import * as z from 'zod';

// Our pages forbid making code from text; the schema library would try it, be refused, and leave a report of a
// violation on every page. Imported first, before any schema is made.
z.config({ jitless: true });

import * as z from 'zod';
import { code, title } from './decimals.ts';

/** Who says so: the paper an adjuster can ask for. */
export const authority = z.strictObject({
  authorityId: code,
  kind: z.enum([
    'resolution',
    'ordinance',
    'tariff',
    'schedule',
    'labor-agreement',
    'contract',
    'price-list',
    'other',
  ]),
  title,
  edition: z.string().trim().max(120).nullable(),
  page: z.string().trim().max(40).nullable(),
});
export type AuthorityKind = z.infer<typeof authority>['kind'];

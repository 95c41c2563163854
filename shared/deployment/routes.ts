import type { Role } from '../roles.ts';

/** A route family is one Lambda function: a folder in `functions/`. */
export const families = [
  'submissions',
  'records',
  'network',
  'evidence',
  'packets',
  'calendar',
  'dispatch',
  'health',
] as const;
export type Family = (typeof families)[number];

export interface Route {
  readonly method: 'GET' | 'POST';
  /** Path with API Gateway's `{name}` parameters. */
  readonly path: string;
  readonly family: Family;
  /** Who may call it; 'anyone' needs no sign-in and is read-only. Kinds of submission narrow it further. */
  readonly allowed: readonly Role[] | 'anyone';
}

/** A route's name: `GET /api/strikes/{strikeId}`. */
export const routeKey = ({ method, path }: Pick<Route, 'method' | 'path'>): string => `${method} ${path}`;

const everyone: readonly Role[] = ['crew', 'clerk', 'manager'];
const desk: readonly Role[] = ['clerk', 'manager'];

/** Every route there is, read top to bottom: the gateway, the local server and the access tests all walk this table. */
export const routes: readonly Route[] = [
  { method: 'GET', path: '/api/health', family: 'health', allowed: 'anyone' },
  { method: 'GET', path: '/api/utility', family: 'records', allowed: 'anyone' },
  { method: 'GET', path: '/api/me', family: 'records', allowed: everyone },
  { method: 'POST', path: '/api/submissions', family: 'submissions', allowed: everyone },
  { method: 'GET', path: '/api/strikes', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/strikes/{strikeId}', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/hydrants', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/hydrants/{hydrantId}', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/network/{hydrantId}', family: 'network', allowed: everyone },
  // Asks what would be, and records nothing.
  { method: 'POST', path: '/api/network/{hydrantId}/closing', family: 'network', allowed: everyone },
  // What fire dispatch was sent, and what became of it: those who were not reached first.
  { method: 'GET', path: '/api/dispatch', family: 'dispatch', allowed: everyone },
  { method: 'GET', path: '/api/dispatch/strikes/{strikeId}', family: 'dispatch', allowed: everyone },
  { method: 'GET', path: '/api/dispatch/hydrants/{hydrantId}', family: 'dispatch', allowed: everyone },
  { method: 'POST', path: '/api/dispatch/retry', family: 'dispatch', allowed: everyone },
  { method: 'GET', path: '/api/models', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/stock', family: 'records', allowed: everyone },
  // Codes and titles of the rate book, for the crew's pick lists; its rates are the desk's.
  { method: 'GET', path: '/api/job-codes', family: 'records', allowed: everyone },
  { method: 'GET', path: '/api/rate-books', family: 'records', allowed: desk },
  // What a strike's bill is made from, apart from the rates: for what another edition would make of it.
  { method: 'GET', path: '/api/strikes/{strikeId}/work', family: 'packets', allowed: desk },
  { method: 'POST', path: '/api/search', family: 'records', allowed: desk },
  { method: 'GET', path: '/api/claim-figures', family: 'records', allowed: desk },
  { method: 'GET', path: '/api/ledger', family: 'records', allowed: desk },
  { method: 'GET', path: '/api/claims', family: 'records', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}', family: 'records', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}/deadlines', family: 'calendar', allowed: desk },
  { method: 'GET', path: '/api/deadlines', family: 'calendar', allowed: desk },
  { method: 'GET', path: '/api/calendar', family: 'calendar', allowed: desk },
  { method: 'POST', path: '/api/calendar', family: 'calendar', allowed: desk },
  // A calendar program signs in nowhere: the address itself is the secret, and can be revoked.
  { method: 'GET', path: '/api/calendar/{file}', family: 'calendar', allowed: 'anyone' },
  { method: 'GET', path: '/api/claims/{claimId}/statement', family: 'packets', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}/objections', family: 'packets', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}/letter', family: 'packets', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}/letters/{letter}', family: 'packets', allowed: desk },
  { method: 'POST', path: '/api/claims/{claimId}/letters', family: 'packets', allowed: desk },
  { method: 'POST', path: '/api/claims/{claimId}/packet', family: 'packets', allowed: desk },
  { method: 'GET', path: '/api/claims/{claimId}/packet-jobs/{jobId}', family: 'packets', allowed: desk },
  // Public keys, so that anyone can tell a packet that the utility issued.
  { method: 'GET', path: '/api/packet-keys', family: 'packets', allowed: 'anyone' },
  { method: 'POST', path: '/api/evidence/uploads', family: 'evidence', allowed: everyone },
  { method: 'GET', path: '/api/evidence/{sha256}', family: 'evidence', allowed: everyone },
];

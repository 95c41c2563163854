const crew = ['crew', 'clerk', 'manager'] as const;
const desk = ['clerk', 'manager'] as const;

/**
 * Who may ask what, written out and not read from the code: a route that comes, or that another group is let in to, is a
 * decision and never a correction of the test. Crews see no claim, no amount and nobody's name; the public asks for what
 * is public and hands in nothing.
 */
export const whoMay: Readonly<Record<string, readonly ('crew' | 'clerk' | 'manager')[] | 'anyone'>> = {
  'GET /api/health': 'anyone',
  'GET /api/utility': 'anyone',
  'GET /api/packet-keys': 'anyone',
  // Its address is the secret.
  'GET /api/calendar/{file}': 'anyone',

  'GET /api/me': crew,
  'POST /api/submissions': crew,
  'GET /api/strikes': crew,
  'GET /api/strikes/{strikeId}': crew,
  'GET /api/hydrants': crew,
  'GET /api/hydrants/{hydrantId}': crew,
  'GET /api/network/{hydrantId}': crew,
  'POST /api/network/{hydrantId}/closing': crew,
  'GET /api/dispatch': crew,
  'GET /api/dispatch/strikes/{strikeId}': crew,
  'GET /api/dispatch/hydrants/{hydrantId}': crew,
  'POST /api/dispatch/retry': crew,
  'GET /api/models': crew,
  'GET /api/stock': crew,
  'GET /api/job-codes': crew,
  'POST /api/evidence/uploads': crew,
  'GET /api/evidence/{sha256}': crew,

  'GET /api/rate-books': desk,
  'GET /api/strikes/{strikeId}/work': desk,
  'POST /api/search': desk,
  'GET /api/claim-figures': desk,
  'GET /api/ledger': desk,
  'GET /api/claims': desk,
  'GET /api/claims/{claimId}': desk,
  'GET /api/claims/{claimId}/deadlines': desk,
  'GET /api/deadlines': desk,
  'GET /api/calendar': desk,
  'POST /api/calendar': desk,
  'GET /api/claims/{claimId}/statement': desk,
  'GET /api/claims/{claimId}/objections': desk,
  'GET /api/claims/{claimId}/letter': desk,
  'GET /api/claims/{claimId}/letters/{letter}': desk,
  'POST /api/claims/{claimId}/letters': desk,
  'POST /api/claims/{claimId}/packet': desk,
  'GET /api/claims/{claimId}/packet-jobs/{jobId}': desk,
};

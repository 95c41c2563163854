import type { FindingKey, Findings } from '../../../shared/damage/finding.ts';

/** Findings as one strike report would have given them. */
export const findings = (said: Partial<Record<FindingKey, string>>): Findings =>
  Object.fromEntries(
    Object.entries(said).map(([key, value]) => [
      key,
      {
        key,
        value,
        source: { kind: 'strike', submissionId: 's-1', at: '2026-03-04T02:30:00Z', personId: 'w-7' },
      },
    ]),
  );

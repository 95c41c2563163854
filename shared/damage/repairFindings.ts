import type { BodyOf } from '../submissions/submission.ts';
import type { FindingKey } from './findings.ts';

/** What a repair found once the hydrant was open, as findings. */
export function repairFindings(_body: BodyOf<'repair'>): readonly (readonly [FindingKey, unknown])[] {
  return [];
}

import { describe, expect, it } from 'vitest';
import { demoModels } from '../../../infra/local/demo/models.ts';
import { closedStrikes } from '../../../infra/local/demo/stories/closed.ts';
import { openStrikes } from '../../../infra/local/demo/stories/open.ts';
import { otherCauses } from '../../../infra/local/demo/stories/otherCauses.ts';
import { Teller } from '../../../infra/local/demo/teller.ts';
import { forms, isFactKind } from '../../../shared/submissions/kinds.ts';
import { checkForm } from '../../../site/src/app/form/check.ts';
import { decode } from '../../../site/src/app/form/decode.ts';
import { specOf } from '../../../site/src/app/form/specs/index.ts';

/** Every submission that the demo tells, with times to the second: real bodies of nearly every kind. */
function told() {
  const teller = new Teller(new Date('2026-11-05T14:23:45.678Z'));
  otherCauses(teller);
  closedStrikes(teller);
  openStrikes(teller);
  return teller.told.map(({ submission }) => submission);
}

describe('a recorded body opened as a form', () => {
  const bodies = told().flatMap((submission) =>
    isFactKind(submission.kind) && specOf(submission.kind) ? [submission] : [],
  );

  it('covers the crew’s kinds', () => {
    expect(demoModels.length).toBeGreaterThan(0);
    expect(new Set(bodies.map(({ kind }) => kind))).toEqual(
      new Set([
        'strike',
        'party',
        'outage',
        'out-of-service-notice',
        'expected-return',
        'inspection',
        'planned-work',
        'valve-operation',
        'repair',
        'flow-test',
        'return-to-service',
        'link',
        'water-lost',
      ]),
    );
  });

  it.each(bodies.map((submission, index) => [index, submission.kind, submission] as const))(
    '%i (%s) gives the same body again',
    (_index, kind, submission) => {
      const spec = specOf(kind)!;
      const body = submission.body as Record<string, unknown>;
      const values = { ...decode(spec.nodes, body, 'America/New_York'), ...spec.steering?.(body) };
      const checked = checkForm(spec, values, 'America/New_York');
      expect(checked).toEqual({ ok: true, body: forms[spec.kind].body.parse(body) });
    },
  );
});

import { describe, expect, it } from 'vitest';
import { exhibitLists } from '../../../shared/evidence/declared.ts';
import { factKinds } from '../../../shared/submissions/kinds.ts';
import { formOf, parseSubmission } from '../../../shared/submissions/submission.ts';
import { fact, onClaim, onHydrant, onStrike, onUtility } from '../../support/submissions.ts';

/**
 * An upload is given only for what a submission declares, so how much it may declare is the limit on uploads (issue 6:
 * "within a count limit"). Sixty is the most that any form takes; the sizes are the house's own, no source.
 */
const MOST = 60;
const MOST_BYTES = 100_000_000;
const subjects = { strike: onStrike(1), claim: onClaim(1), hydrant: onHydrant('H-1'), utility: onUtility };

const [photo] = fact('strike', 1, onStrike(1)).body.photos;

const declaring = factKinds.flatMap((kind) => {
  const [subject] = formOf(fact(kind, 1, onUtility)).subjects;
  const sample = fact(kind, 1, subjects[subject!]);
  return exhibitLists.flatMap((list) => {
    const exhibits = (sample.body as Record<string, unknown>)[list];
    if (!Array.isArray(exhibits)) return [];
    return [{ kind, list, sample, exhibit: (exhibits[0] ?? photo) as Record<string, unknown> }];
  });
});

const problemsOf = (sample: object, list: string, exhibits: readonly object[]) => {
  const body = { ...(sample as { readonly body: object }).body, [list]: exhibits };
  const parsed = parseSubmission({ ...sample, body });
  return parsed.ok ? [] : parsed.problems.map(({ code, path }) => `${code} ${path}`);
};
const hash = (number: number): string => number.toString(16).padStart(64, '0');

it('every form with photos, documents or exhibits is looked at', () => {
  expect(declaring.map(({ kind }) => kind)).toEqual(
    expect.arrayContaining(['strike', 'repair', 'flow-test', 'inspection', 'return-to-service', 'documents']),
  );
});

describe.each(declaring)('$list of $kind', ({ list, sample, exhibit }) => {
  it('are so many and no more', () => {
    const many = Array.from({ length: MOST + 1 }, (_, index) => ({ ...exhibit, sha256: hash(index + 1) }));
    expect(problemsOf(sample, list, many)).toContain(`too-many body.${list}`);
  });
  it('are so large and no larger', () => {
    expect(problemsOf(sample, list, [{ ...exhibit, bytes: MOST_BYTES }])).toEqual([]);
    expect(problemsOf(sample, list, [{ ...exhibit, bytes: MOST_BYTES + 1 }])).toContainEqual(
      expect.stringContaining(`body.${list}.0.bytes`),
    );
    expect(problemsOf(sample, list, [{ ...exhibit, bytes: 0 }])).toContainEqual(
      expect.stringContaining(`body.${list}.0.bytes`),
    );
  });
  it('are pictures and PDF, nothing that a browser runs', () => {
    for (const mediaType of ['text/html', 'image/svg+xml', 'application/xhtml+xml', 'video/mp4'])
      expect(problemsOf(sample, list, [{ ...exhibit, mediaType }])).toContainEqual(
        expect.stringContaining(`body.${list}.0.mediaType`),
      );
  });
});

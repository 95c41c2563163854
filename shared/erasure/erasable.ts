import type { Projections } from '../projections/project.ts';
import { splitStream, type Stream } from '../submissions/envelope.ts';
import { splitPersonal } from '../submissions/personal.ts';
import type { Recorded } from '../submissions/recorded.ts';
import type { Kind } from '../submissions/kinds.ts';

/** A submission of which something personal is still kept: where it stands in the body, and not what it says. */
export interface Erasable {
  readonly submissionId: string;
  readonly kind: Kind;
  readonly paths: readonly string[];
}

/** What there is to erase among the facts of one stream, read with their personal fields. */
export function erasableOf(recorded: readonly Recorded[]): readonly Erasable[] {
  return recorded.flatMap(({ submission, erased }) => {
    const paths = Object.keys(splitPersonal(submission).personal);
    if (erased || paths.length === 0) return [];
    return [{ submissionId: submission.submissionId, kind: submission.kind, paths }];
  });
}

/**
 * Numbers of the claims that are under a legal hold and rest on this record: the claim itself; claims of the strike, by
 * whichever of its ids; claims of the strikes of a hydrant. While there is one, nothing of the record may be erased.
 */
export function holdsOn(
  stream: Stream,
  { strikes, claims }: Pick<Projections, 'strikes' | 'claims'>,
): readonly string[] {
  const { type, id } = splitStream(stream);
  const strikeIds = new Set(
    strikes
      .filter(
        ({ memberIds, hydrantIds }) =>
          (type === 'strike' && memberIds.includes(id)) || (type === 'hydrant' && hydrantIds.includes(id)),
      )
      .flatMap(({ memberIds }) => memberIds),
  );
  return claims
    .filter(({ claimId, strikeId }) => (type === 'claim' ? claimId === id : strikeIds.has(strikeId)))
    .filter(({ life }) => life.flags.includes('legal-hold'))
    .map(({ claimNumber }) => claimNumber);
}

import { streamOf, type Stream } from '../submissions/envelope.ts';
import { correctionKind } from '../submissions/kinds.ts';
import type { Recorded } from '../submissions/recorded.ts';

/** Fields of a body, of whatever form, that name a hydrant or a strike as the subject's own. */
const hydrantFields = ['hydrantId', 'residualHydrantId'];
const strikeFields = ['sameAsStrikeId'];

/**
 * The streams that a strike's stream has ever named: its hydrants, and strikes it was linked to. Also those that a
 * correction took back, because what was computed of them must be computed anew. Facts are never removed, so this can
 * only grow; two streams that affect each other are always connected by it, whichever arrived first.
 */
export function mentionedStreams(recorded: readonly Recorded[]): readonly Stream[] {
  const named = new Set<Stream>();
  for (const { submission } of recorded) {
    // Trials are left out of every fold, and must not tie real records together.
    if (submission.subject.type !== 'strike' || submission.test === true) continue;
    const body: Readonly<Record<string, unknown>> =
      submission.kind === correctionKind ? (submission.body.replacement ?? {}) : submission.body;
    for (const field of hydrantFields) {
      const hydrantId = body[field];
      if (typeof hydrantId === 'string') named.add(streamOf({ type: 'hydrant', hydrantId }));
    }
    for (const field of strikeFields) {
      const strikeId = body[field];
      if (typeof strikeId === 'string') named.add(streamOf({ type: 'strike', strikeId }));
    }
  }
  return [...named];
}

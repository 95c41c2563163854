import type { StrikeState } from '../../../../shared/strikes/state.ts';
import { useWords } from '../core/words.ts';

/** The stage as a word in a frame. Out of service stands on the one accent: it must not be relied on. */
export function StageTag({ strike }: { readonly strike: StrikeState }) {
  const words = useWords();
  return (
    <span class={strike.returnedAt === null ? 'tag out' : 'tag'}>{words.t(`stage.${strike.stage}`)}</span>
  );
}

import type { List } from '../nodes.ts';
import { fieldId, problemsAt, useScope } from './scope.ts';
import { sentenceFor } from './sentences.ts';

/** Problems of a list itself (too few rows) or of one whole row of it (the same person twice), not of a field in it. */
export function ListProblems({ list, path }: { readonly list: List; readonly path: string }) {
  const { problems, words } = useScope();
  const found = problemsAt(problems, path);
  if (found.length === 0) return null;
  return (
    <p class="error" id={`${fieldId(path)}-error`}>
      {found.map((each) => sentenceFor(list, each, words)).join(' ')}
    </p>
  );
}

import { useEffect, useRef } from 'preact/hooks';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { useWords, type Wording } from '../core/words.ts';
import { locateEntry } from '../form/locateEntry.ts';
import type { FormSpec } from '../form/spec.ts';
import type { Values } from '../form/nodes.ts';
import { wordsOf } from '../form/words.ts';
import { fieldId } from '../form/view/scope.ts';
import { sentenceFor } from '../form/view/sentences.ts';

interface Props {
  readonly spec: FormSpec;
  readonly values: Values;
  readonly problems: readonly Problem[];
  /** Counts the tries to send: the summary takes the focus at each. */
  readonly tries: number;
}

interface Line {
  readonly label: string;
  readonly sentence: string;
  readonly target: string | null;
}

function lineFor(spec: FormSpec, values: Values, found: Problem, words: Wording): Line {
  const entry = locateEntry(spec.nodes, values, found.path);
  if (!entry) {
    const target = found.path === 'reason' ? 'f-reason' : null;
    return { label: target ? words.t('form.reason') : '', sentence: sentenceFor(null, found, words), target };
  }
  const rows = entry.rows.map(({ list, path, number }) =>
    words.t(`${wordsOf(spec.kind, list, path)}.item`, { number }),
  );
  const key = wordsOf(spec.kind, entry.entry, entry.path);
  const own = entry.path === entry.rows.at(-1)?.path ? [] : [words.t(key)];
  return {
    label: [...rows, ...own].join(' · '),
    sentence: sentenceFor(entry.entry, found, words, key),
    target: fieldId(entry.path),
  };
}

/** Moves to a field: opens the folded section it lies in, and puts the focus where one types. */
function focusField(id: string): void {
  const at = document.getElementById(id);
  if (!at) return;
  at.closest('details')?.setAttribute('open', '');
  const control = at.matches('input, textarea, select')
    ? at
    : at.querySelector<HTMLElement>('input, textarea, select, button');
  (control ?? at).focus();
  at.scrollIntoView({ block: 'center' });
}

/** Every problem of the form at once, each leading to its field. */
export function ProblemSummary({ spec, values, problems, tries }: Props) {
  const words = useWords();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (tries === 0) return;
    box.current?.focus({ preventScroll: true });
    // A long form may still be growing by its errors as the focus comes: where it stands then is what is shown.
    requestAnimationFrame(() => box.current?.scrollIntoView({ block: 'start' }));
  }, [tries]);
  if (problems.length === 0) return null;
  return (
    <div class="summary" ref={box} tabIndex={-1} role="group" aria-labelledby="summary-title">
      <h2 id="summary-title">{words.t('form.problems', { count: problems.length })}</h2>
      <ProblemList spec={spec} values={values} problems={problems} />
    </div>
  );
}

/** What is wrong in a form, each problem leading to its field. */
export function ProblemList({ spec, values, problems }: Omit<Props, 'tries'>) {
  const words = useWords();
  return (
    <ul>
      {problems.map((found, index) => {
        const { label, sentence, target } = lineFor(spec, values, found, words);
        const text = label ? `${label}: ${sentence}` : sentence;
        return (
          <li key={index}>
            {target ? (
              <button type="button" class="link" onClick={() => focusField(target)}>
                {text}
              </button>
            ) : (
              text
            )}
          </li>
        );
      })}
    </ul>
  );
}

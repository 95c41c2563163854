import { createContext, type ComponentType } from 'preact';
import { useContext } from 'preact/hooks';
import type { Problem } from '../../../../../shared/problems/problem.ts';
import type { Wording } from '../../core/words.ts';
import type { FormContext, FormSpec } from '../spec.ts';
import type { LevelProps } from './props.ts';

/** What every field of a form needs to know of the form it stands in. */
export interface Scope {
  readonly spec: FormSpec;
  readonly job: FormContext;
  readonly words: Wording;
  readonly problems: readonly Problem[];
  readonly submissionId: string;
  /** Draws a level of fields; lists and rows hold levels of their own. */
  readonly Fields: ComponentType<LevelProps>;
}

const ScopeContext = createContext<Scope | null>(null);
export const ScopeProvider = ScopeContext.Provider;

export function useScope(): Scope {
  const scope = useContext(ScopeContext);
  if (!scope) throw new Error('a field stands outside a form');
  return scope;
}

/** The id of a field's control; the summary of problems leads to it. */
export const fieldId = (path: string): string => `f-${path.replaceAll('.', '-')}`;

/** Problems of exactly this field, or of anything within it (a position's latitude). */
export const problemsAt = (problems: readonly Problem[], path: string, within = false): readonly Problem[] =>
  problems.filter((found) => found.path === path || (within && found.path.startsWith(`${path}.`)));

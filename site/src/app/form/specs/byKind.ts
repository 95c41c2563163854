import type { FactKind } from '../../../../../shared/submissions/kinds.ts';
import { observable } from '../../core/observable.ts';
import type { FormSpec } from '../spec.ts';
import { expectedReturnSpec, noticeSpec, outageSpec } from './notice.ts';
import { strikeSpec } from './strike.ts';

/** What a crew sends first stands in the first script; every other form is read once the first screen stands. */
const early: Partial<Record<FactKind, FormSpec>> = Object.fromEntries(
  [strikeSpec, outageSpec, noticeSpec, expectedReturnSpec].map((spec) => [spec.kind, spec]),
);

/** Every form, once it is here; screens that need one follow it. */
export const formsRead = observable<Partial<Record<FactKind, FormSpec>> | null>(null);

let reading: Promise<boolean> | null = null;

/** Reads the forms that are not here yet. False when they could not be had; asked again, it tries again. */
export function loadForms(): Promise<boolean> {
  reading ??= import('./index.ts')
    .then(({ specs }) => {
      formsRead.set(specs);
      return true;
    })
    .catch(() => {
      reading = null;
      return false;
    });
  return reading;
}

/** The form of a kind. `undefined`: not here yet, and asked for; null: there is none. */
export function formOfKind(kind: string): FormSpec | null | undefined {
  const known = early[kind as FactKind] ?? formsRead.get()?.[kind as FactKind];
  if (known) return known;
  if (formsRead.get()) return null;
  void loadForms();
  return undefined;
}

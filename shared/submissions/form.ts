import type * as z from 'zod';
import type { Role } from '../roles.ts';
import type { SubjectType } from './envelope.ts';

/**
 * A form: one kind of submission. `body` is checked by the same schema in the browser, the handler and an import.
 * To add one: write a file in `forms/`, list it in `kinds.ts`, give it words, and say in a fold what it changes.
 */
export interface Form<Kind extends string, Body extends z.ZodType> {
  readonly kind: Kind;
  readonly body: Body;
  readonly subjects: readonly SubjectType[];
  /**
   * Who may write it, and who may read it back whole. A manager may do either for every form and is listed so that
   * the table can be read without knowing that.
   */
  readonly writers: readonly Role[];
  readonly readers: readonly Role[];
  /**
   * Fields that name or describe a person, as paths in the body (`vehicles.*.plate`). They live in a separate
   * erasable item; the fact keeps a salted hash.
   */
  readonly personal: readonly string[];
}

export function form<const Kind extends string, Body extends z.ZodType>(
  definition: Form<Kind, Body>,
): Form<Kind, Body> {
  return definition;
}

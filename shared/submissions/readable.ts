import { currentSchemaVersion } from './envelope.ts';
import { correctionKind, isFactKind } from './kinds.ts';

/** As much of a stored submission as says how it is to be read. */
export interface Written {
  readonly schemaVersion: number;
  readonly kind: string;
  readonly body: unknown;
}

/**
 * Whether this version of the software can say what a stored submission means: its form is known, and its schema no
 * later than ours. A newer version wrote any other; to pass over it would be to show as whole what is not.
 */
export function isReadable({ schemaVersion, kind, body }: Written): boolean {
  // A correction stands for another submission of a form of its own.
  const form =
    kind === correctionKind ? (body as { readonly targetKind?: unknown } | null)?.targetKind : kind;
  return schemaVersion <= currentSchemaVersion && isFactKind(form);
}

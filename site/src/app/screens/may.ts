import { mayDo } from '../../../../shared/roles.ts';
import { forms, isFactKind } from '../../../../shared/submissions/kinds.ts';
import type { Session } from '../core/session.ts';

/** Whether this person may write this kind; the server decides, this only spares them a form that would be refused. */
export const mayWrite = (current: Session | null, kind: string): boolean =>
  current !== null && isFactKind(kind) && mayDo(current, [...forms[kind].writers, 'manager']);

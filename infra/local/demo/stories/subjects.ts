import type { Subject } from '../../../../shared/submissions/envelope.ts';

export const strikeSubject = (strikeId: string): Subject => ({ type: 'strike', strikeId });
export const hydrantSubject = (hydrantId: string): Subject => ({ type: 'hydrant', hydrantId });

/** Places on a desk screen that another part of it leads to. A fragment cannot: the address is the screen's. */

export const lineElementId = (lineId: string): string => `line-${lineId}`;
export const entryElementId = (submissionId: string): string => `entry-${submissionId}`;

/** Opens what is folded at a place, and goes there with the focus. False when it is not on the screen. */
function show(id: string, details: string): boolean {
  const at = document.getElementById(id);
  if (!at) return false;
  const folded = at.matches('details') ? at : at.querySelector(details);
  folded?.setAttribute('open', '');
  at.scrollIntoView({ block: 'center' });
  (at.querySelector<HTMLElement>('summary') ?? at).focus();
  return true;
}

/** The line of the statement that an objection or a remark is about. */
export const showLine = (lineId: string): boolean => show(lineElementId(lineId), 'details');
/** One entry of the story. */
export const showEntry = (submissionId: string): boolean => show(entryElementId(submissionId), 'details');

/** A part of the screen, such as its packet. */
export function showPart(id: string): void {
  const part = document.getElementById(id);
  part?.scrollIntoView({ block: 'start' });
  part?.focus({ preventScroll: true });
}

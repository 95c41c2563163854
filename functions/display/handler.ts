import { MOST_DISPLAYED_BYTES } from '../../shared/evidence/limits.ts';
import { displayCopyOf, noteTooLarge } from '../evidence/displayCopies.ts';
import { logLine } from '../log/log.ts';
import { environment, evidenceStore } from '../wiring.ts';
import { originalIn } from './arrived.ts';
import { OperatorFault, wordless } from '../log/wordless.ts';

/**
 * Makes the display copy of an original that has arrived. An event that comes twice finds the copy made; one that is
 * lost is made good when a packet wants the picture. Throws when the store is away or the picture took too long, so that
 * it is tried again and then stands in the queue of what failed.
 */
export const handler = wordless(async (event: unknown): Promise<void> => {
  const arrived = originalIn(event, environment().evidenceUrl);
  if (arrived === null) return;
  const { sha256: original, bytes } = arrived;
  const evidence = await evidenceStore();
  const began = performance.now();
  // Not read to find out: an archive that the server made, too, may be more than can be held here.
  const tooLarge = bytes !== null && bytes > MOST_DISPLAYED_BYTES;
  const copy = tooLarge
    ? await noteTooLarge(evidence.copies, original)
    : await displayCopyOf(evidence, original);
  if (copy === null)
    throw new OperatorFault(`the original that was said to have arrived is not there: ${original}`);
  const { picture } = copy.record;
  if (picture.code === 'none' && (picture.reason === 'too-slow' || picture.reason === 'hash-differs'))
    throw new OperatorFault(`no display copy could be made now (${picture.reason}): ${original}`);
  logLine({
    level: 'info',
    event: 'display-copy',
    original,
    outcome: picture.code === 'made' ? 'made' : picture.reason,
    ms: Math.round(performance.now() - began),
  });
});

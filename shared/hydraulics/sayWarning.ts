import { formatParams, type Reader } from '../units/format.ts';
import { say } from '../words/index.ts';
import type { FlowTestWarning } from './flowTestWarnings.ts';

/** A warning as a sentence in the reader's language and units: what is doubtful, and what to do in the field. */
export function sayWarning(warning: FlowTestWarning, reader: Reader): string {
  return say(reader.locale, `hydraulics.warning.${warning.code}`, formatParams(warning.params, reader));
}

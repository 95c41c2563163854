import { splitStream, type Stream } from '../../shared/submissions/envelope.ts';
import { erasure, erasureGrounds } from '../../shared/submissions/forms/erasure.ts';
import type { BodyOf } from '../../shared/submissions/submission.ts';
import { readCommandLine } from './commandLine.ts';
import { RefusedStart } from './refusedStart.ts';

export interface EraseOptions {
  readonly stream: Stream;
  /** Submissions to take; none: every one of the record that holds something personal. */
  readonly only: readonly string[];
  readonly write: boolean;
  readonly body: Omit<BodyOf<'erasure'>, 'targetIds'>;
}

const values = ['--ground', '--decided-by', '--reference', '--only', '--lang'] as const;

/** Throws `RefusedStart`, which says what would be right. */
export function readEraseOptions(argv: readonly string[]): EraseOptions | 'help' {
  const { files, given, on, unknown, valueless } = readCommandLine(argv, {
    flags: ['--write'],
    valued: values,
  });
  if (on.has('--help')) return 'help';
  const [stream, ...more] = files;
  if (stream === undefined || more.length + unknown.length + valueless.length > 0 || !isStream(stream))
    throw new RefusedStart('erase.usage');
  const all = (option: (typeof values)[number]): string[] =>
    given.filter(([name]) => name === option).map(([, value]) => value);
  const body = erasure.body.omit({ targetIds: true }).safeParse({
    ground: all('--ground').at(-1),
    reference: all('--reference').at(-1) ?? null,
    decidedByWorkerId: all('--decided-by').at(-1),
  });
  if (!body.success) {
    const wrong = body.error.issues.map(({ path }) => String(path[0]));
    throw new RefusedStart(wrong.includes('ground') ? 'erase.ground' : 'erase.who', {
      grounds: erasureGrounds.join(', '),
    });
  }
  return { stream, only: all('--only'), write: on.has('--write'), body: body.data };
}

/** A stream of what an erasure can be about. */
function isStream(text: string): boolean {
  try {
    return (erasure.subjects as readonly string[]).includes(splitStream(text).type);
  } catch {
    return false;
  }
}

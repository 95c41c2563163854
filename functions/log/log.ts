/** What a log line may hold. No bodies, no names, no messages of foreign errors: those can carry personal data. */
export interface LogEntry {
  readonly level: 'info' | 'warn' | 'error';
  /** What happened, in kebab case: `request-failed`, `projection-failed`. */
  readonly event: string;
  readonly [field: string]: string | number | boolean | null | undefined;
}

export type Log = (entry: LogEntry) => void;

// Not by the console: Lambda's puts its own words before each line, and what counts the lines then reads no JSON.
let write = (line: string, _level: LogEntry['level']): void => void process.stdout.write(`${line}\n`);

/** Says where this process's log lines go. Never called on AWS, where Lambda collects standard output. */
export function logTo(sink: (line: string, level: LogEntry['level']) => void): void {
  write = sink;
}

/** One JSON line to standard output, which is where Lambda collects it. */
export const logLine: Log = (entry) =>
  write(JSON.stringify({ at: new Date().toISOString(), ...entry }), entry.level);

/**
 * An error as log fields: its class, that of what caused it, its code and where it was thrown. The message is left out,
 * because drivers and parsers quote their input in it, and the input may hold a person's data.
 */
export function describeError(error: unknown): {
  errorName: string;
  errorCode?: string;
  causeName?: string;
  errorAt?: string;
} {
  if (!(error instanceof Error)) return { errorName: typeof error };
  const frames = framesOf(error);
  const code = (error as { code?: unknown }).code;
  return {
    errorName: error.name,
    ...(typeof code === 'string' ? { errorCode: code } : {}),
    // A service that is away and a right that is missing are told apart by it.
    ...(error.cause instanceof Error ? { causeName: error.cause.name } : {}),
    ...(frames.length > 0
      ? {
          errorAt: frames
            .slice(0, 8)
            .map((line) => line.trim())
            .join(' | '),
        }
      : {}),
  };
}

/** A line of a stack trace that names a place in a file, or in what has none. */
const frame =
  /^\s+at (?:(?:.+ )?\(?(?:file:|node:|\/|[A-Za-z]:\\).*:\d+:\d+\)?|.+ \((?:<anonymous>|native|index \d+)\))$/;

/** The places alone: a stack begins with the message, and a message of several lines may itself hold one with ` at `. */
function framesOf({ stack = '', message }: Error): string[] {
  const begins = stack.indexOf(message);
  const places = begins < 0 ? stack : stack.slice(begins + message.length);
  return places.split('\n').filter((line) => frame.test(line));
}

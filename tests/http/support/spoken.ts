import { vi } from 'vitest';
import type { LogEntry } from '../../../functions/log/log.ts';

/** Whatever is said while handlers run: their log, and anything that goes past it to the console or a standard stream. */
export function listen(logged: readonly LogEntry[]) {
  const past: unknown[] = [];
  const note = (...said: readonly unknown[]): true => {
    past.push(...said.map((one) => (one instanceof Error ? `${one.stack} ${one.message}` : one)));
    return true;
  };
  const spies = [
    ...(['log', 'info', 'warn', 'error', 'debug', 'trace', 'dir'] as const).map((way) =>
      vi.spyOn(console, way).mockImplementation(note),
    ),
    ...[process.stdout, process.stderr].map((stream) => vi.spyOn(stream, 'write').mockImplementation(note)),
  ];
  let heard = logged.length;
  return {
    /** What was said since it was last asked, in small letters: ids of hydrants are kept in capitals. */
    since(): string {
      const said = JSON.stringify([logged.slice(heard), past.splice(0)]).toLowerCase();
      heard = logged.length;
      return said;
    },
    stop: () => spies.forEach((spy) => spy.mockRestore()),
  };
}

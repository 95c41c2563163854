import { pathToFileURL } from 'node:url';

/**
 * One function as it is deployed, alone in a process: loads the bundle named on the command line, then answers each
 * event with what it cost. Processor time counts every thread; its share of a machine is reckoned elsewhere.
 */
type Handler = (event: unknown) => Promise<unknown>;
export interface FunctionAnswer {
  readonly answer: unknown;
  readonly problem: string | null;
  readonly cpuMs: number;
  readonly wallMs: number;
  readonly peakMb: number;
}
export interface FunctionLoaded {
  readonly loadedCpuMs: number;
}

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const [, , file = ''] = process.argv;
// A log line of a handler is counted as bytes and shown to nobody.
const { handler } = (await import(pathToFileURL(file).href)) as { handler: Handler };
process.send?.({ loadedCpuMs: cpuMs() } satisfies FunctionLoaded);

process.on('message', (event: unknown) => {
  void (async () => {
    const [before, began] = [cpuMs(), performance.now()];
    let answer: unknown = null;
    let problem: string | null = null;
    try {
      answer = (await handler(event)) ?? null;
    } catch (error) {
      problem = error instanceof Error ? (error.stack ?? error.message) : String(error);
    }
    process.send?.({
      answer,
      problem,
      cpuMs: cpuMs() - before,
      wallMs: performance.now() - began,
      peakMb: process.resourceUsage().maxRSS / 1024,
    } satisfies FunctionAnswer);
  })();
});

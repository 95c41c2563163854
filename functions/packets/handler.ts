import { lambdaHandler } from '../http/lambda.ts';
import { describeError } from '../log/log.ts';
import { environment } from '../wiring.ts';
import { createPacketsApp } from './app.ts';
import type { PacketsDeps } from './deps.ts';
import { runJob } from './jobs.ts';
import { packetsDeps } from './wired.ts';

export const handler = lambdaHandler(async () => {
  const wired = await packetsDeps();
  const { packetJobsFunction } = environment();
  const deps: PacketsDeps = {
    ...wired,
    startJob: async (order) => {
      if (packetJobsFunction !== null) {
        const { invokeLater } = await import('../stores/jobs/invokeLater.ts');
        return invokeLater(packetJobsFunction, order);
      }
      // In this process, after the answer: a job says itself what became of it.
      setImmediate(() => {
        runJob(deps, order).catch((error: unknown) =>
          deps.log({ level: 'error', event: 'packet-job-lost', ...describeError(error) }),
        );
      });
    },
  };
  return createPacketsApp(deps);
});

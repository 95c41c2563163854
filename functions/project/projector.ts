import type { Stream } from '../../shared/submissions/envelope.ts';
import type { ProjectorDeps } from './deps.ts';
import { projectStream } from './project.ts';

export interface Projector {
  /** Resolves when everything that was accepted in the stream before the call has been projected. */
  readonly project: (stream: Stream) => Promise<void>;
}

/**
 * The projector of one process. It runs one projection at a time, so that requests of this process never contend with
 * each other, and a stream that waits already is not queued twice: the run that is to come reads its newest facts.
 * Between processes the versions decide (`settle.ts`).
 */
export function createProjector(deps: ProjectorDeps): Projector {
  const waiting = new Map<Stream, Promise<void>>();
  let last: Promise<unknown> = Promise.resolve();
  return {
    project(stream) {
      const queued = waiting.get(stream);
      if (queued !== undefined) return queued;
      const run = last.then(() => {
        waiting.delete(stream);
        return projectStream(deps, stream);
      });
      waiting.set(stream, run);
      // A projection that fails fails its callers, not those behind it.
      last = run.catch(() => undefined);
      return run;
    },
  };
}

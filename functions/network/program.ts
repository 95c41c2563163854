/**
 * The thread's program: beside this file in the repository, and beside the bundle where it is deployed
 * (`infra/aws/bundling.ts` puts it there), because a bundle of one file has no second one to start.
 */
export const besideProgram = new URL(
  import.meta.url.endsWith('.ts') ? './worker.ts' : './worker.mjs',
  import.meta.url,
);

import type { FunctionName } from './permissions.ts';

/** What each function gets, MB. With it comes processor: a whole one at 1,769 MB (AWS Lambda developer guide, "Memory"). */
export const memoryMb: Readonly<Record<FunctionName, number>> = {
  submissions: 512,
  records: 1024,
  // Two threads with the solver, each with its own copy of the file, on a whole core.
  network: 2048,
  evidence: 512,
  packets: 2048,
  // Photos unpacked two at a time, and the archive with its originals whole.
  packetJobs: 3008,
  // A picture of fifty megapixels unpacked, twice over.
  display: 3008,
  health: 256,
  project: 1024,
  publish: 1769,
  calendar: 1024,
  digest: 1024,
  dispatch: 512,
  dispatchSend: 1024,
  outgoing: 512,
};

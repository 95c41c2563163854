import { useEffect, useRef, useState } from 'preact/hooks';
import type { Problem } from '../../../../shared/problems/problem.ts';
import { getJson, postJson, type Answer } from '../core/api.ts';
import { claimPath } from '../core/records.ts';
import { readText, removeStored, writeText } from '../core/storage.ts';
import { useWords } from '../core/words.ts';

export interface BuiltPacket {
  readonly url: string;
  readonly archiveUrl: string | null;
  readonly demandCents: number;
  readonly revision: number | null;
  readonly problems: readonly (Problem & { readonly message: string })[];
  /** Sentences about files that a preview lists without showing them; an answer of before has none. */
  readonly leftOut?: readonly string[];
}

interface Job {
  readonly state: 'queued' | 'working' | 'done' | 'failed';
  readonly done: number;
  readonly total: number;
  readonly words: string;
  readonly problems: readonly Problem[];
  readonly packet: BuiltPacket | null;
}

export type PacketState =
  | { readonly is: 'idle' }
  | { readonly is: 'building'; readonly words: string | null; readonly done: number; readonly total: number }
  | { readonly is: 'built'; readonly built: BuiltPacket }
  | { readonly is: 'failed'; readonly words: string; readonly problems: readonly Problem[] };

export interface PacketRequest {
  readonly mode: 'preview' | 'freeze';
  readonly changes?: string;
}

const ASK_EVERY_MS = 700;
/** A tunnel is no reason to give up on a job that goes on elsewhere. */
const MOST_SILENT = 20;
const keyOf = (claimId: string): string => `packet-job.${claimId}`;

/**
 * A packet's job: started, asked about until it ends, and found again after a reload, because its id is kept on the
 * device until its answer has been seen. `onIssued` is told when a revision was issued.
 */
export function usePacketJob(
  claimId: string,
  onIssued: () => void,
): { readonly state: PacketState; readonly start: (request: PacketRequest) => Promise<void> } {
  const words = useWords();
  const [state, setState] = useState<PacketState>({ is: 'idle' });
  const [jobId, setJobId] = useState<string | null>(() => readText(keyOf(claimId)));
  const issued = useRef(onIssued);
  issued.current = onIssued;

  const fail = (answer: Exclude<Answer<unknown>, { outcome: 'ok' }>): void =>
    setState(
      answer.outcome === 'refused'
        ? { is: 'failed', words: answer.title, problems: answer.problems }
        : {
            is: 'failed',
            words: words.t(`screen.failed.${answer.outcome === 'sign-in' ? 'sign-in' : answer.reason}`),
            problems: [],
          },
    );

  useEffect(() => {
    if (jobId === null) return;
    let gone = false;
    let silent = 0;
    const end = (): void => {
      removeStored(keyOf(claimId));
      setJobId(null);
    };
    const ask = async (): Promise<void> => {
      const answer = await getJson<Job>(`${claimPath(claimId)}/packet-jobs/${encodeURIComponent(jobId)}`);
      if (gone) return;
      if (answer.outcome === 'unreachable' && (silent += 1) < MOST_SILENT) {
        again();
        return;
      }
      if (answer.outcome !== 'ok') {
        // Signed in again, the job is found where it was left.
        if (answer.outcome === 'refused') end();
        fail(answer);
        return;
      }
      silent = 0;
      const { value: job } = answer;
      if (job.state === 'failed') {
        end();
        setState({ is: 'failed', words: job.words, problems: job.problems });
        return;
      }
      if (job.state === 'done' && job.packet) {
        end();
        setState({ is: 'built', built: job.packet });
        if (job.packet.revision !== null) issued.current();
        return;
      }
      setState({ is: 'building', words: job.words, done: job.done, total: job.total });
      again();
    };
    let timer: ReturnType<typeof setTimeout> | undefined;
    const again = (): void => {
      timer = setTimeout(() => void ask(), ASK_EVERY_MS);
    };
    setState((now) => (now.is === 'building' ? now : { is: 'building', words: null, done: 0, total: 0 }));
    void ask();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [jobId, claimId]);

  const start = async (request: PacketRequest): Promise<void> => {
    setState({ is: 'building', words: null, done: 0, total: 0 });
    const answer = await postJson<{ jobId: string }>(`${claimPath(claimId)}/packet`, {
      ...request,
      background: true,
    });
    if (answer.outcome !== 'ok') {
      fail(answer);
      return;
    }
    writeText(keyOf(claimId), answer.value.jobId);
    setJobId(answer.value.jobId);
  };
  return { state, start };
}

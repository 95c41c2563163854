import { parseSubmission, type Fact } from '../../../shared/submissions/submission.ts';
import type { ObjectStore } from '../objects/objects.ts';
import type { Erasures, RecordedErasure } from './erasures.ts';

/** Beside the evidence, whose lock keeps them, and under no name that an original has. */
const PREFIX = 'erasures/';

export function objectErasures(objects: Pick<ObjectStore, 'put' | 'get' | 'list'>): Erasures {
  return {
    async add(erasure) {
      const key = `${PREFIX}${erasure.submission.submissionId}.json`;
      const text = JSON.stringify(erasure);
      // What stands here stays: one that cannot be read would end every restore and every erasure from then on.
      erasureIn(key, text);
      await objects.put(key, Buffer.from(text), { contentType: 'application/json', ifAbsent: true });
    },
    async list() {
      const listed: RecordedErasure[] = [];
      for (const key of await objects.list(PREFIX)) {
        const found = await objects.get(key);
        if (found === null) throw new Error(`${key} was listed and is not there`);
        listed.push(erasureIn(key, Buffer.from(found.bytes).toString('utf8')));
      }
      return listed;
    },
  };
}

function erasureIn(key: string, text: string): RecordedErasure {
  const { submission, recordedAt, deliveredBy } = JSON.parse(text) as RecordedErasure;
  const parsed = parseSubmission(submission);
  if (!parsed.ok || parsed.value.kind !== 'erasure') throw new Error(`${key} is no erasure`);
  return { submission: parsed.value satisfies Fact<'erasure'>, recordedAt, deliveredBy, erased: false };
}

import type { Block } from './blocks.ts';
import type { PacketReader } from './reader.ts';
import type { PacketContent } from './schema.ts';

/** Right after the letter of a further revision: what changed and why, and the records that came since the last one. */
export function changeBlocks({ issue, manifest }: PacketContent, reader: PacketReader): Block[] {
  if (issue.state !== 'frozen' || issue.changes === null) return [];
  const { say } = reader;
  const revision = issue.revision - 1;
  const added = new Set(issue.added);
  const records = manifest.submissions.filter(({ submissionId }) => added.has(submissionId));
  const list: Block[] =
    records.length === 0
      ? []
      : [
          {
            type: 'list',
            items: records.map(({ kind, recordedAt }) =>
              say('packet.changes.record', { kind: say(`kind.${kind}`), at: reader.dateTime(recordedAt) }),
            ),
          },
        ];
  return [
    { type: 'heading', level: 1, text: say('packet.changes.title', { revision }), newPage: true },
    ...issue.changes.split(/\s*\n\s*/).map((text): Block => ({ type: 'paragraph', text })),
    { type: 'paragraph', text: say('packet.changes.added', { count: records.length, revision }) },
    ...list,
  ];
}

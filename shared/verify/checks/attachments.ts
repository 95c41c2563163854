import type { PacketDocument } from '../../packet/blocks.ts';
import { WORDING_NAME } from '../../packet/wording.ts';
import type { EmbeddedFile } from '../file/attachments.ts';
import { finding, type Finding } from '../finding.ts';
import { firstDifference, shown } from './same.ts';

/** The attachment that everything is recomputed from. */
export const DATA_NAME = 'packet.json';

/** What is wrong with the attachments as such, before any is read: two of one name. */
export function doubleFindings(files: readonly EmbeddedFile[]): Finding[] {
  const count = new Map<string, number>();
  for (const { name } of files) count.set(name, (count.get(name) ?? 0) + 1);
  return [...count]
    .filter(([, times]) => times > 1)
    .map(([name, times]) => finding('attachment-twice', name, { name, times }));
}

/** Whether the file bears the attachments that its data give, each with what belongs in it, and no others. */
export function attachmentFindings(
  { attachments }: PacketDocument,
  files: readonly EmbeddedFile[],
): Finding[] {
  const wanted = new Map(attachments.map((attachment) => [attachment.name, attachment.text]));
  const there = new Set(files.map(({ name }) => name));
  return [
    ...[...wanted.keys()]
      .filter((name) => !there.has(name))
      .map((name) => finding('attachment-missing', name, { name })),
    ...files.flatMap(({ name, bytes }): Finding[] => {
      const text = wanted.get(name);
      if (text === undefined) return [finding('attachment-added', name, { name, bytes: bytes.length })];
      // The data themselves were judged field by field; the words are held against the pages.
      return name === DATA_NAME || name === WORDING_NAME ? [] : differing(name, text, bytes);
    }),
  ];
}

/** An attachment that says something else, with the first place at which it does where both are JSON. */
function differing(name: string, wanted: string, bytes: Uint8Array): Finding[] {
  const found = new TextDecoder().decode(bytes);
  if (found === wanted) return [];
  try {
    const at = firstDifference(JSON.parse(found), JSON.parse(wanted));
    if (at === null) return [];
    return [
      finding('attachment-differs', name, {
        name,
        at: at.path || 'none',
        file: shown(at.file),
        own: shown(at.own),
      }),
    ];
  } catch {
    return [finding('attachment-differs', name, { name, at: 'none', file: '', own: '' })];
  }
}

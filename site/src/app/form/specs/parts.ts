import type { Leaf, List, Node, Values } from '../nodes.ts';
import { textOf } from '../nodes.ts';

/** Nodes that more than one form uses. */

/** Dispatch told: nothing said, nothing sent. Who told is filled in and does not count as said. */
export const dispatchNodes: readonly Node[] = [
  { type: 'instant', name: 'dispatch.at', words: 'field.dispatch.at', required: false },
  {
    type: 'person',
    name: 'dispatch.toldByWorkerId',
    words: 'field.dispatch.toldByWorkerId',
    prefilled: true,
  },
  { type: 'text', name: 'dispatch.takenBy', words: 'field.dispatch.takenBy' },
];

/** What is asked of a photo or a paper that is handed in; `views` in the order in which they are likely. */
export const fileFields = (views: readonly string[], more: readonly Node[] = []): readonly Node[] => [
  { type: 'kept', name: 'sha256' },
  { type: 'kept', name: 'bytes' },
  { type: 'kept', name: 'mediaType' },
  { type: 'kept', name: 'fileWrittenAt', optional: true },
  { type: 'kept', name: 'chosenAt', optional: true },
  ...more,
  { type: 'choice', name: 'view', words: 'field.photo.view', list: 'view', choices: views, required: true },
  { type: 'instant', name: 'takenAt', words: 'field.photo.takenAt' },
  { type: 'text', name: 'caption', words: 'field.photo.caption' },
];

export const photos = (atMost: number): List => ({
  type: 'list',
  name: 'photos',
  words: 'field.photos',
  as: 'photos',
  atMost,
  item: fileFields(['overall', 'mid', 'close', 'scale', 'document', 'other']),
});

export const note: Leaf = { type: 'text', name: 'note', words: 'field.note', lines: 3 };

/** Stretches of time; `title` heads the list. */
export const intervals = (name: string, title: string, atMost = 30): List => ({
  type: 'list',
  name,
  words: title,
  atMost,
  blank: { from: '', to: '' },
  item: [
    { type: 'instant', name: 'from', words: 'field.interval.from', required: true },
    { type: 'instant', name: 'to', words: 'field.interval.to', required: true },
  ],
});

export const seen = (name: string): Leaf => ({
  type: 'choice',
  name,
  list: 'seen',
  choices: ['yes', 'no', 'unknown'],
  whenBlank: 'unknown',
});

export const answered =
  (name: string, ...answers: readonly string[]) =>
  (values: Values): boolean =>
    answers.includes(textOf(values[name]));

import { readStored, writeStored } from './storage.ts';

/** Codes that were used on this device before, offered again: a crew types the same few every day. */
const MOST = 20;

export function recalled(name: string): readonly string[] {
  const kept = readStored(`recall.${name}`);
  return Array.isArray(kept) ? kept.filter((each): each is string => typeof each === 'string') : [];
}

export function recall(name: string, code: string): void {
  const text = code.trim();
  if (text === '') return;
  writeStored(`recall.${name}`, [text, ...recalled(name).filter((each) => each !== text)].slice(0, MOST));
}

import { v7 } from 'uuid';
import { readStored, writeStored } from './storage.ts';

/** A new id for a submission or a strike: UUID version 7, made here and kept until the server has confirmed. */
export const newId = (): string => v7();

/** This device's id, made once. It says which device wrote something, nothing of its owner. */
export function deviceId(): string {
  const known = readStored('device');
  if (typeof known === 'string' && known !== '') return known;
  const made = `device-${newId()}`;
  writeStored('device', made);
  return made;
}

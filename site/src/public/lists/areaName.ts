import type { Reader } from '../reader.ts';

/** How an area is called: its square, or that it has none. */
export const areaName = (reader: Reader, code: string): string =>
  code === 'elsewhere' ? reader.say('lists.area.elsewhere') : reader.say('lists.area', { code });

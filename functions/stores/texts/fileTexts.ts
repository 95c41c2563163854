import { mkdir, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { TextSender } from './textSender.ts';

/** Text messages as files of a folder, for one machine: the same message sent again is the same file. */
export function fileTexts(folder: string): TextSender {
  return {
    async send({ phone, text }, key) {
      await mkdir(folder, { recursive: true });
      const name = `${key.replaceAll(/[^\w.-]+/g, '_')}.txt`;
      const file = join(folder, name);
      // Whole or not at all.
      await writeFile(`${file}.new`, `To: ${phone}\n\n${text}\n`);
      await rename(`${file}.new`, file);
      return name;
    },
  };
}

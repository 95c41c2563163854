import { mkdir, rename, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { MailSender } from './mailSender.ts';

/** Letters as files of a folder, for one machine: the same letter sent again is the same file. */
export function fileSender(folder: string, from: string): MailSender {
  return {
    async send({ to, subject, text }, key) {
      await mkdir(folder, { recursive: true });
      const name = `${key.replaceAll(/[^\w.-]+/g, '_')}.txt`;
      const file = join(folder, name);
      // Whole or not at all.
      await writeFile(`${file}.new`, `From: ${from}\nTo: ${to}\nSubject: ${subject}\n\n${text}`);
      await rename(`${file}.new`, file);
      return name;
    },
  };
}

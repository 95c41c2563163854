import { fileURLToPath } from 'node:url';
import type { MailSender } from './mailSender.ts';

/** The sender at an address: `file:///folder`, or `ses:` for the account's mail service. */
export async function openSender(address: string, from: string): Promise<MailSender> {
  if (address.startsWith('file:')) {
    const { fileSender } = await import('./fileSender.ts');
    return fileSender(fileURLToPath(address), from);
  }
  const { sesSender } = await import('./sesSender.ts');
  return sesSender(from);
}

import { fileURLToPath } from 'node:url';
import type { TextSender } from './textSender.ts';

/** The sender of texts at an address: `file:///folder`, or the ARN of a topic. */
export async function openTexts(address: string): Promise<TextSender> {
  if (address.startsWith('file:')) {
    const { fileTexts } = await import('./fileTexts.ts');
    return fileTexts(fileURLToPath(address));
  }
  const { snsTexts } = await import('./snsTexts.ts');
  return snsTexts(address);
}

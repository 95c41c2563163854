import type { commands as english } from '../en/commands.ts';

export const commands: Record<keyof typeof english, string> = {};

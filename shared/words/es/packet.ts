import type { packet as english } from '../en/packet.ts';

export const packet: Record<keyof typeof english, string> = {};

import * as z from 'zod';

/** The groups a signed-in person may belong to. The public has none and needs none. */
export const roles = ['crew', 'clerk', 'manager'] as const;
export const role = z.enum(roles);
export type Role = (typeof roles)[number];

/** A signed-in person, as their token states them. */
export interface Member {
  readonly personId: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

export const mayDo = (member: Member, allowed: readonly Role[]): boolean =>
  member.roles.some((has) => allowed.includes(has));

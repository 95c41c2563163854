/** English words: commands. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const commands = {} as const;

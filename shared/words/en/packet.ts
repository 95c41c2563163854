/** English words: packet. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const packet = {} as const;

/** English words: forms. Keys begin with the area's own prefix; Spanish must have each of them to compile. */
export const forms = {} as const;

/** True for a value that somebody gave: a form sends null where a question was left open, a script leaves it out. */
export const has = <T>(value: T | null | undefined): value is T => value !== null && value !== undefined;

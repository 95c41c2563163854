/** Whole days from an instant until now. */
export const ageDays = (since: string, now = Date.now()): number =>
  Math.max(0, Math.floor((now - Date.parse(since)) / 86_400_000));

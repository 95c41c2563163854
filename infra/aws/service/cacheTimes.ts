/** A page older than its own "do not rely on this after" must never be served from a cache without asking. */
export const PAGE_SECONDS = 60;

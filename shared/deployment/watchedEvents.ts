/**
 * Log lines that a deployment counts: the name of the event, and the field with the number where there is one. Alarms
 * read them, so a name here and a name in a handler are the same name.
 */
export const watchedEvents = {
  /** The public pages were made anew. */
  published: { event: 'public-page-published', field: null },
  /** They could not be; the last good ones stand. */
  publishRefused: { event: 'public-page-kept', field: null },
  /** They were, and say themselves that reports are missing from them. */
  publishedBehind: { event: 'public-page-behind', field: null },
  /** Somebody was answered that the fault is ours. */
  requestFailed: { event: 'request-failed', field: null },
  /** Somebody was answered to try again, because a store was away. */
  storeUnavailable: { event: 'store-unavailable', field: null },
  /** An address to send a photo or document to was given, and how long that is. */
  uploadAllowed: { event: 'upload-allowed', field: 'bytes' },
  /** Somebody has sent as much as one person may on a day, and was told to wait. */
  uploadHeldBack: { event: 'upload-held-back', field: null },
  /** A packet that a clerk ordered could not be built: a fault of ours, or a store or the signing key was away. */
  packetFailed: { event: 'packet-job-failed', field: null },
  /** Messages to fire dispatch that have not gone out in time. */
  lateMessages: { event: 'outgoing-checked', field: 'lateMessages' },
  /** Daily letters that have not. */
  lateLetters: { event: 'outgoing-checked', field: 'lateLetters' },
  /** Reasons why mail or texts reach nobody yet: a sandbox, an address that nobody has confirmed. */
  closedWays: { event: 'outgoing-checked', field: 'closedWays' },
} as const;
export type WatchedEvent = keyof typeof watchedEvents;

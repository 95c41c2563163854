/** The longest that a service may take to open a line, and be silent on an open one. */
const connectionTimeoutMs = 1000;
/** Three tries of this end before the 29 s of a function behind the gateway do. Bytes that still flow are not silence. */
const silentMs = 8000;

/**
 * What every client of a service but the tables' is made with (theirs: `dynamodb/client.ts`). Left to itself the SDK
 * waits for ever on a line that has gone dead, and the function would end at its time limit with nothing said.
 */
export const waits = (limits: { readonly maxAttempts?: number; readonly silentMs?: number } = {}) => ({
  maxAttempts: limits.maxAttempts ?? 3,
  retryMode: 'standard' as const,
  requestHandler: {
    connectionTimeout: connectionTimeoutMs,
    socketTimeout: limits.silentMs ?? silentMs,
  },
});

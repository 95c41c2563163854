import { DynamoDBClient } from '@aws-sdk/client-dynamodb';

/** How long the store may take. Four tries of two seconds end well before a caller's own 29 s are over. */
export interface Patience {
  readonly maxAttempts: number;
  readonly connectionTimeoutMs: number;
  readonly requestTimeoutMs: number;
}
export const patience: Patience = { maxAttempts: 4, connectionTimeoutMs: 1000, requestTimeoutMs: 2000 };

/**
 * The client every store shares. Region and credentials come from the environment, as on AWS; `endpoint` is another
 * server of the same API (the embedded one, an emulator).
 */
export function dynamodbClient(endpoint: string | null, waits: Patience = patience): DynamoDBClient {
  return new DynamoDBClient({
    ...(endpoint === null ? {} : { endpoint }),
    maxAttempts: waits.maxAttempts,
    retryMode: 'standard',
    requestHandler: {
      connectionTimeout: waits.connectionTimeoutMs,
      requestTimeout: waits.requestTimeoutMs,
      // Without this the handler only warns and waits on.
      throwOnRequestTimeout: true,
    },
  });
}

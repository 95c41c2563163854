import { InvokeCommand, LambdaClient } from '@aws-sdk/client-lambda';
import { StoreUnavailable } from '../faults.ts';
import { waits } from '../patience.ts';

/** Hands an order to another function, and does not wait for what becomes of it. */
export async function invokeLater(
  functionName: string,
  order: object,
  client: LambdaClient = new LambdaClient(waits()),
): Promise<void> {
  const command = new InvokeCommand({
    FunctionName: functionName,
    InvocationType: 'Event',
    Payload: Buffer.from(JSON.stringify(order)),
  });
  try {
    await client.send(command);
  } catch (error) {
    throw new StoreUnavailable('the function that takes orders does not answer', { cause: error });
  }
}

import { InvokeCommand, LambdaClient } from '@aws-sdk/client-lambda';
import { StoreUnavailable } from '../stores/faults.ts';
import type { PacketOrder } from './jobs.ts';

/** Hands an order to the function that builds packets, and does not wait for it. */
export async function invokeLater(
  functionName: string,
  order: PacketOrder,
  client: LambdaClient = new LambdaClient({}),
): Promise<void> {
  const command = new InvokeCommand({
    FunctionName: functionName,
    InvocationType: 'Event',
    Payload: Buffer.from(JSON.stringify(order)),
  });
  try {
    await client.send(command);
  } catch (error) {
    throw new StoreUnavailable('the packets’ builder does not answer', { cause: error });
  }
}

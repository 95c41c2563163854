import { runJob } from '../packets/jobs.ts';
import { packetOrder } from '../packets/order.ts';
import { packetsDeps } from '../packets/wired.ts';
import { wordless } from '../log/wordless.ts';

/** Builds an ordered packet. Started by the packets' function alone; what became of it is kept where that one reads. */
export const handler = wordless(async (event: unknown): Promise<void> => {
  const order = packetOrder.parse(event);
  await runJob({ ...(await packetsDeps()), startJob: async () => undefined }, order);
});

import { inpText } from '../../functions/network/inpText.ts';
import { readOutline } from '../../functions/network/solve.ts';
import { networkModels } from '../../functions/wiring.ts';
import type { NetworkMeta } from '../../shared/network/edition.ts';

/** Puts a network model in force, unless one is there already; for the demo, whose load may be run again. */
export async function loadNetworkInp(
  inp: string,
  { rule, ...meta }: Pick<NetworkMeta, 'datedOn' | 'hour' | 'sourceFile' | 'loadedBy' | 'rule'>,
): Promise<void> {
  const models = await networkModels();
  if (await models.current()) return;
  const bytes = Buffer.from(inp);
  const reply = await readOutline(inpText(bytes), meta.hour);
  if (!reply.ok)
    throw new Error(reply.problems.map(({ code, params }) => `${code} ${JSON.stringify(params)}`).join('; '));
  await models.publish(bytes, reply.answer, { ...meta, rule, loadedAt: new Date().toISOString() });
}

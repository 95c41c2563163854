import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import * as z from 'zod';
import { tables } from '../../functions/wiring.ts';
import type { Role } from '../../shared/roles.ts';
import { demoMembers, loadDemo } from './demo/index.ts';
import { townNetworkInp, townNetworkMeta } from './demo/network.ts';
import { loadInventoryCsv } from './loadInventory.ts';
import { loadTownLayers } from './loadLayer.ts';
import { loadNetworkInp } from './loadNetwork.ts';
import type { LocalServer } from './localServer.ts';
import { membersFor } from './people.ts';
import { demoUtility } from './demo/index.ts';

const demoState = z.object({
  /** The instant on which the demo's times hang: a load that was cut short is completed with the same. */
  now: z.iso.datetime(),
  /** Where the finished packet lies; null while the load is not done. */
  packet: z.string().nullable(),
});

/** Who signs in for each role of the demo. */
export const demoPeople = membersFor(demoUtility, demoMembers);

/**
 * Loads the demo utility into an empty ledger through the API, or completes a load that was cut short. Answers the
 * path of the demo's finished packet, or null when the ledger holds somebody's own records.
 */
export async function ensureDemo(
  server: LocalServer,
  folder: string,
  loading: () => void,
): Promise<string | null> {
  const file = join(folder, 'demo.json');
  const text = await readFile(file, 'utf8').catch(() => null);
  const known = text === null ? null : demoState.parse(JSON.parse(text));
  if (known?.packet) return known.packet;
  if (known === null && !(await ledgerIsEmpty())) return null;

  loading();
  const now = known?.now ?? new Date().toISOString();
  await writeFile(file, JSON.stringify({ now, packet: null }));
  const tokenFor = (role: Role): Promise<string> => server.issuer.tokenFor(demoPeople[role]);
  const loaded = await loadDemo(
    {
      origin: server.origin,
      tokenFor,
      loadInventory: (csv, name) => loadInventoryCsv(csv, name, demoMembers.manager),
      loadNetwork: () => loadNetworkInp(townNetworkInp(), townNetworkMeta),
      loadLayers: () => loadTownLayers(demoMembers.manager),
    },
    new Date(now),
  );
  const packet = join(folder, 'demo-packet.pdf');
  await writeFile(packet, await download(new URL(loaded.packet.url, server.origin)));
  await server.following.settled();
  await writeFile(file, JSON.stringify({ now, packet }));
  return packet;
}

async function ledgerIsEmpty(): Promise<boolean> {
  for await (const page of tables().ledger.readAll({ personal: false })) if (page.length > 0) return false;
  return true;
}

async function download(url: URL): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`the packet could not be read: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

import { timingSafeEqual } from 'node:crypto';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Table } from '../dynamodb/table.ts';
import { StoreUnavailable } from '../faults.ts';
import type { CalendarAddress, Calendars } from './calendars.ts';

const OF_PERSON = 'calendar:person';
const OF_TOKEN = 'calendar:token';
/** Two who make an address for one person at once: the later wins, after at most so many tries. */
const MOST_TRIES = 10;

/**
 * Addresses on a table. A person's row says which hash is theirs now; a hash's row says whose it was. An address holds
 * while both agree, so making a new one or revoking takes one write.
 */
export function tableCalendars(table: Table): Calendars {
  const personRow = async (personId: string) => {
    const attributes = await table.get({ partition: OF_PERSON, sort: personId });
    const value = attributes?.['value'];
    return {
      version: Number(attributes?.['version'] ?? 0),
      address: value === undefined ? null : (fromJsonAttribute(value) as CalendarAddress | null),
    };
  };
  const write = async (
    personId: string,
    address: CalendarAddress | null,
  ): Promise<CalendarAddress | null> => {
    for (let tries = 0; tries < MOST_TRIES; tries += 1) {
      const { version, address: before } = await personRow(personId);
      const attributes = { value: toJsonAttribute(address), version: version + 1 };
      const still = version === 0 ? { absent: true as const } : { attribute: 'version', equals: version };
      if (await table.put({ partition: OF_PERSON, sort: personId, attributes }, still)) return before;
    }
    throw new StoreUnavailable('a calendar address stayed contended');
  };
  return {
    async put(address) {
      const { personId, tokenSha256 } = address;
      await table.put({ partition: OF_TOKEN, sort: tokenSha256, attributes: { personId } }, { absent: true });
      await write(personId, address);
    },
    revoke: async (personId) => (await write(personId, null)) !== null,
    ofPerson: async (personId) => (await personRow(personId)).address,
    async find(tokenSha256) {
      const held = await table.get({ partition: OF_TOKEN, sort: tokenSha256 });
      if (held === null) return null;
      const { address } = await personRow(String(held['personId']));
      return address && sameText(address.tokenSha256, tokenSha256) ? address : null;
    },
  };
}

function sameText(a: string, b: string): boolean {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
}

import type { OutboxEntry } from '../../../shared/digest/outbox.ts';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Attributes, Table } from '../dynamodb/table.ts';
import type { Outbox } from './outbox.ts';

const box = (day: string): string => `mail:${day}`;

/** The outbox on a table: a partition a day, an entry a person. */
export function tableOutbox(table: Table): Outbox {
  const content = (entry: OutboxEntry, version: number): Attributes => ({
    value: toJsonAttribute(entry),
    version,
  });
  return {
    add: (entry) =>
      table.put(
        { partition: box(entry.day), sort: entry.personId, attributes: content(entry, 1) },
        { absent: true },
      ),
    ofDay: async (day) =>
      (await table.query(box(day))).map(({ attributes: { value, version } }) => ({
        entry: fromJsonAttribute(value) as OutboxEntry,
        version: Number(version),
      })),
    replace: ({ entry: { day, personId }, version }, next) =>
      table.put(
        { partition: box(day), sort: personId, attributes: content(next, version + 1) },
        { attribute: 'version', equals: version },
      ),
  };
}

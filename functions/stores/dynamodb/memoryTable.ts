import { assertFits, type Attributes, type Condition, type Key, type Row, type Table } from './table.ts';

const byBytes = (a: Row, b: Row): number => Buffer.compare(Buffer.from(a.sort), Buffer.from(b.sort));

/** The twin in memory of a DynamoDB table: for tests and previews. It holds the same limits and the same order. */
export function memoryTable(): Table {
  const partitions = new Map<string, Map<string, Attributes>>();
  const found = ({ partition, sort }: Key): Attributes | null => partitions.get(partition)?.get(sort) ?? null;
  const holds = (attributes: Attributes | null, condition: Condition): boolean =>
    'absent' in condition
      ? attributes === null
      : attributes !== null && attributes[condition.attribute] === condition.equals;

  return {
    get: async (key) => found(key),
    getMany: async (keys) =>
      keys.flatMap((key) => {
        const attributes = found(key);
        return attributes === null ? [] : [{ ...key, attributes }];
      }),
    put: async ({ partition, sort, attributes }, condition) => {
      assertFits({ partition, sort, attributes });
      if (!holds(found({ partition, sort }), condition)) return false;
      const rows = partitions.get(partition) ?? new Map<string, Attributes>();
      partitions.set(partition, rows.set(sort, structuredClone(attributes)));
      return true;
    },
    remove: async ({ partition, sort }) => {
      partitions.get(partition)?.delete(sort);
    },
    query: async (partition, prefix = '') =>
      [...(partitions.get(partition) ?? [])]
        .map(([sort, attributes]) => ({ partition, sort, attributes }))
        .filter(({ sort }) => sort.startsWith(prefix))
        .sort(byBytes),
    async *scan() {
      for (const [partition, rows] of [...partitions])
        yield [...rows].map(([sort, attributes]) => ({ partition, sort, attributes }));
    },
  };
}

import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Attributes, Condition, Table } from '../dynamodb/table.ts';
import type { ProjectionStore } from './projections.ts';

const versionIn = (attributes: Attributes | null): number => Number(attributes?.['version'] ?? 0);
const valueIn = (attributes: Attributes | null) => attributes?.['value'];

/** Projections on a table. A removed key stays as a row with a version and no value. */
export function tableProjections(table: Table): ProjectionStore {
  const write = (partition: string, key: string, content: Attributes, expected: number): Promise<boolean> => {
    const still: Condition = expected === 0 ? { absent: true } : { attribute: 'version', equals: expected };
    const attributes = { ...content, version: expected + 1 };
    return table.put({ partition, sort: key, attributes }, still);
  };
  return {
    async get<T>(partition: string, key: string) {
      const attributes = await table.get({ partition, sort: key });
      const value = valueIn(attributes);
      return value === undefined
        ? null
        : { value: fromJsonAttribute(value) as T, version: versionIn(attributes) };
    },
    async list<T>(partition: string, prefix?: string) {
      return (await table.query(partition, prefix)).flatMap(({ sort, attributes }) => {
        const value = valueIn(attributes);
        return value === undefined
          ? []
          : [{ key: sort, value: fromJsonAttribute(value) as T, version: versionIn(attributes) }];
      });
    },
    versionOf: async (partition, key) => versionIn(await table.get({ partition, sort: key })),
    put: (partition, key, value, expected) =>
      write(partition, key, { value: toJsonAttribute(value) }, expected),
    remove: (partition, key, expected) => write(partition, key, {}, expected),
  };
}

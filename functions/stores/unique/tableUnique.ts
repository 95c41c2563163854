import type { Table } from '../dynamodb/table.ts';
import type { Unique } from './unique.ts';

/** Unique numbers on a table: one conditional put each, so two takers at once cannot both succeed. */
export function tableUnique(table: Table): Unique {
  return {
    async take(space, name, owner) {
      if (await table.put({ partition: space, sort: name, attributes: { owner } }, { absent: true }))
        return { taken: true, owner };
      const held = await table.get({ partition: space, sort: name });
      if (held === null) throw new Error(`${space} refused ${name} and then had no such name`);
      const holder = String(held['owner']);
      // Also true when our own first try landed and its answer was lost.
      return { taken: holder === owner, owner: holder };
    },
    names: async (space) => (await table.query(space)).map(({ sort }) => sort),
  };
}

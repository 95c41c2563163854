import { uploadsSpace } from '../../../shared/deployment/tables.ts';
import type { UploadsOfDay } from '../../../shared/evidence/uploadBudget.ts';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Table } from '../dynamodb/table.ts';
import { StoreUnavailable } from '../faults.ts';
import type { Uploads } from './uploads.ts';

/** A device sends its photos one after the other; so many at once is somebody who tries to get past the count. */
const MOST_TRIES = 20;

/** One row a person, written over when the day is another: what was counted yesterday is nobody's concern. */
export function tableUploads(table: Table): Uploads {
  return {
    async count(personId, decide) {
      for (let tries = 0; tries < MOST_TRIES; tries += 1) {
        const attributes = await table.get({ partition: uploadsSpace, sort: personId });
        const version = Number(attributes?.['version'] ?? 0);
        const before = attributes && (fromJsonAttribute(attributes['value']) as UploadsOfDay);
        const spent = decide(before);
        if (spent.outcome !== 'counted') return spent;
        const row = {
          partition: uploadsSpace,
          sort: personId,
          attributes: { value: toJsonAttribute(spent.next), version: version + 1 },
        };
        const still = version === 0 ? { absent: true as const } : { attribute: 'version', equals: version };
        if (await table.put(row, still)) return spent;
      }
      throw new StoreUnavailable('the count of a person’s uploads stayed contended');
    },
  };
}

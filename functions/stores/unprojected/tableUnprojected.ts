import type { Table } from '../dynamodb/table.ts';
import type { Mark, Unprojected } from './unprojected.ts';

/** All in one partition: the publisher asks for all of them at once, and mostly there is none. */
const partition = 'unprojected';
/** No id holds a control character. */
const sortOf = ({ stream, submissionId, attempt }: Mark): string =>
  [stream, submissionId, attempt].join('\n');

/** The marks on a table: a row each. */
export function tableUnprojected(table: Table): Unprojected {
  return {
    async add(mark) {
      await table.put(
        { partition, sort: sortOf(mark), attributes: { recordedAt: mark.recordedAt } },
        { absent: true },
      );
    },
    list: async (stream) =>
      (await table.query(partition, stream === undefined ? undefined : `${stream}\n`)).map(
        ({ sort, attributes }): Mark => {
          const [of = '', submissionId = '', attempt = ''] = sort.split('\n');
          return { stream: of, submissionId, attempt, recordedAt: String(attributes['recordedAt']) };
        },
      ),
    async remove(marks) {
      await Promise.all(marks.map((mark) => table.remove({ partition, sort: sortOf(mark) })));
    },
  };
}

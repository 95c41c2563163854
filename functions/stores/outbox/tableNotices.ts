import type { DispatchNotice, NoticeDelivery } from '../../../shared/dispatch/notice.ts';
import { fromJsonAttribute, toJsonAttribute } from '../dynamodb/jsonAttribute.ts';
import type { Attributes, Row, Table } from '../dynamodb/table.ts';
import type { Kept, Notices } from './notices.ts';

/** Partitions of the outbox table. Letters have `mail:`, calendars their own. */
const boxes = {
  notices: (subject: string): string => `notices:${subject}`,
  spoken: (outageId: string): string => `notices-of:${outageId}`,
  deliveries: (day: string): string => `deliveries:${day}`,
};

/** Numbers in the order of their text. */
const padded = (number: number): string => String(number).padStart(6, '0');
/** No id holds a control character, so a line feed ends the one part and begins the next. */
const entryOf = ({ subject, number }: Pick<NoticeDelivery, 'subject' | 'number'>): string =>
  `${subject}\n${padded(number)}\n`;

const content = (value: unknown, version: number): Attributes => ({ value: toJsonAttribute(value), version });
const kept = <T>({ attributes: { value, version } }: Row): Kept<T> => ({
  value: fromJsonAttribute(value) as T,
  version: Number(version),
});
const unchanged = (version: number) => ({ attribute: 'version', equals: version });

/** On the outbox table: a partition a hydrant, one an outage, one a day. */
export function tableNotices(table: Table): Notices {
  const deliveryKey = (delivery: NoticeDelivery) => ({
    partition: boxes.deliveries(delivery.day),
    sort: entryOf(delivery) + delivery.recipientId,
  });
  return {
    of: async (subject) =>
      (await table.query(boxes.notices(subject))).map((row) => kept<DispatchNotice>(row)),
    add: (notice) =>
      table.put(
        {
          partition: boxes.notices(notice.subject),
          sort: padded(notice.number),
          attributes: content(notice, 1),
        },
        { absent: true },
      ),
    replace: ({ value: { subject, number }, version }, next) =>
      table.put(
        {
          partition: boxes.notices(subject),
          sort: padded(number),
          attributes: content(next, version + 1),
        },
        unchanged(version),
      ),

    mark: async (outageId, subject) => {
      await table.put(
        { partition: boxes.spoken(outageId), sort: subject, attributes: content({}, 1) },
        { absent: true },
      );
    },
    subjectsOf: async (outageId) => (await table.query(boxes.spoken(outageId))).map(({ sort }) => sort),

    addDelivery: (delivery) =>
      table.put({ ...deliveryKey(delivery), attributes: content(delivery, 1) }, { absent: true }),
    deliveriesOn: async (day) =>
      (await table.query(boxes.deliveries(day))).map((row) => kept<NoticeDelivery>(row)),
    deliveriesOf: async (message) =>
      (await table.query(boxes.deliveries(message.day), entryOf(message))).map((row) =>
        kept<NoticeDelivery>(row),
      ),
    replaceDelivery: ({ value, version }, next) =>
      table.put({ ...deliveryKey(value), attributes: content(next, version + 1) }, unchanged(version)),
  };
}

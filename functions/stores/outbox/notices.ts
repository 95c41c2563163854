import type { DispatchNotice, NoticeDelivery, NoticeSubject } from '../../../shared/dispatch/notice.ts';

/** Something kept, with the count of its writes, so that of two who change it one does. */
export interface Kept<T> {
  readonly value: T;
  readonly version: number;
}

/** Messages to dispatch: what it was told of each hydrant, and what became of every message to each recipient. */
export interface Notices {
  /** What was told of a hydrant or place, first to last. */
  of(subject: NoticeSubject): Promise<readonly Kept<DispatchNotice>[]>;
  /** Writes the next message. False when there is one of that number: then somebody else was quicker. */
  add(notice: DispatchNotice): Promise<boolean>;
  /** Writes it anew if nobody has since it was read. */
  replace(kept: Kept<DispatchNotice>, next: DispatchNotice): Promise<boolean>;

  /** Remembers that a message of this subject speaks of this outage. Written before the message is. */
  mark(outageId: string, subject: NoticeSubject): Promise<void>;
  subjectsOf(outageId: string): Promise<readonly NoticeSubject[]>;

  /** Puts a message to one recipient in. False when it is there: it goes once, whoever asks for it how often. */
  addDelivery(delivery: NoticeDelivery): Promise<boolean>;
  /** Everything to be sent, or sent, of the messages of one day. */
  deliveriesOn(day: string): Promise<readonly Kept<NoticeDelivery>[]>;
  /** The same of one message. */
  deliveriesOf(
    message: Pick<DispatchNotice, 'day' | 'subject' | 'number'>,
  ): Promise<readonly Kept<NoticeDelivery>[]>;
  /** Writes what became of it if nobody has written since it was read. */
  replaceDelivery(kept: Kept<NoticeDelivery>, next: NoticeDelivery): Promise<boolean>;
}

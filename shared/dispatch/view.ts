import type { UtilitySettings } from '../utility/settings.ts';
import type { Locale } from '../words/index.ts';
import type { DispatchNotice, NoticeDelivery } from './notice.ts';
import { readerFor } from './reader.ts';
import { noticeText } from './text.ts';

/** A message as crews and the desk see it: recipients by their label, and no address. */
export interface NoticeView extends Pick<
  DispatchNotice,
  'subject' | 'number' | 'what' | 'reference' | 'at' | 'madeAt' | 'held'
> {
  readonly hydrantId: string | null;
  /** The strike that it speaks of, by the id that it goes by today; null for an outage of another cause. */
  readonly strikeId: string | null;
  readonly place: string | null;
  /** False once a later message speaks of the same hydrant. */
  readonly latest: boolean;
  /** What the text says, to be read out to dispatch, in the reader's own language. */
  readonly text: string;
  readonly deliveries: readonly DeliveryView[];
  /** When a person told dispatch. */
  readonly confirmedAt: string | null;
}

export interface DeliveryView extends Pick<NoticeDelivery, 'state' | 'tries' | 'changedAt' | 'why'> {
  readonly label: string;
  readonly by: 'email' | 'text' | 'unknown';
}

export interface NoticesAnswer {
  /** False: this utility sends none. */
  readonly on: boolean;
  readonly tooOldHours: number;
  /** Newest first. */
  readonly notices: readonly NoticeView[];
}

export interface ViewQuestion {
  readonly notice: DispatchNotice;
  readonly latest: boolean;
  readonly deliveries: readonly NoticeDelivery[];
  readonly confirmedAt: string | null;
  readonly strikeId: string | null;
  readonly settings: UtilitySettings;
  readonly locale: Locale;
}

export function noticeView(question: ViewQuestion): NoticeView {
  const { notice, latest, deliveries, confirmedAt, strikeId, settings, locale } = question;
  const { subject, number, what, reference, at, madeAt, held, facts } = notice;
  return {
    subject,
    number,
    what,
    reference,
    at,
    madeAt,
    held,
    hydrantId: facts.hydrantId,
    strikeId,
    place: facts.place,
    latest,
    text: noticeText(notice, readerFor(settings, locale)),
    deliveries: deliveries.map((delivery) => deliveryView(delivery, settings)),
    confirmedAt,
  };
}

function deliveryView(
  { recipientId, state, tries, changedAt, why }: NoticeDelivery,
  { dispatchMessages }: UtilitySettings,
): DeliveryView {
  const recipient = dispatchMessages?.to.find((one) => one.recipientId === recipientId);
  // Somebody who is no longer in the settings is known by the id alone.
  return {
    label: recipient?.label ?? recipientId,
    by: recipient?.by ?? 'unknown',
    state,
    tries,
    changedAt,
    why,
  };
}

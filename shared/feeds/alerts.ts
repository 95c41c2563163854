import * as z from 'zod';
import { outageChange, type FeedChanges, type OutageChange } from './changes.ts';

/** One message that was sent, as later ones must name it. */
const sentAlert = z.strictObject({
  /** Its place in the row of messages of one outage, from 1. */
  number: z.int().min(1),
  type: z.enum(['Alert', 'Update', 'Cancel']),
  sent: z.iso.datetime(),
  /** Which version of what is said of the outage it told. */
  version: z.int().min(1),
});
export type SentAlert = z.infer<typeof sentAlert>;

/** An outage with the messages about it, oldest first, those long expired left out. */
const alertedOutage = z.strictObject({
  /** As the last message told it. */
  told: outageChange,
  messages: z.array(sentAlert).min(1),
});
export type AlertedOutage = z.infer<typeof alertedOutage>;

export const alertLog = z.strictObject({
  version: z.literal(1),
  checkedAt: z.iso.datetime(),
  outages: z.array(alertedOutage),
});
export type AlertLog = z.infer<typeof alertLog>;

/** A message holds for this long, hours, so that one that is never taken back ends all the same. */
export const ALERT_HOURS = 24;
/** While an outage lasts, it is told again at least this often, hours: well before the last message runs out. */
const RENEW_HOURS = 12;
const HOUR_MS = 3_600_000;

export const expiresAt = (sent: string): string =>
  new Date(Date.parse(sent) + ALERT_HOURS * HOUR_MS).toISOString();

/**
 * The messages of the Common Alerting Protocol up to this check: an `Alert` when an outage is first told, an `Update`
 * whenever something of it changes or the last message is twelve hours old, a `Cancel` when it is over. What is over
 * before anything was sent is not told at all. Without a log (alerting was just set, or the log is damaged) every open
 * outage is told anew.
 */
export function nextAlerts(previous: AlertLog | null, changes: FeedChanges): AlertLog {
  const { checkedAt } = changes;
  const before = new Map(previous?.outages.map((alerted) => [alerted.told.outage.outageId, alerted]));
  const outages = changes.outages.flatMap((now): AlertedOutage[] => {
    const alerted = before.get(now.outage.outageId);
    const type = nextType(alerted, now, checkedAt);
    if (type === null) return alerted ? [alerted] : [];
    const last = alerted?.messages.at(-1);
    const message = { number: (last?.number ?? 0) + 1, type, sent: checkedAt, version: now.version };
    // After a Cancel a new row begins, whose messages refer to none of the old one.
    const row = type === 'Alert' ? [] : recent(alerted?.messages ?? [], checkedAt);
    return [{ told: now, messages: [...row, message] }];
  });
  return alertLog.parse({ version: 1, checkedAt, outages });
}

function nextType(
  alerted: AlertedOutage | undefined,
  now: OutageChange,
  checkedAt: string,
): SentAlert['type'] | null {
  const last = alerted?.messages.at(-1);
  if (!last || last.type === 'Cancel') return now.ended === null ? 'Alert' : null;
  if (now.ended !== null) return 'Cancel';
  const age = Date.parse(checkedAt) - Date.parse(last.sent);
  return last.version !== now.version || age >= RENEW_HOURS * HOUR_MS ? 'Update' : null;
}

/** Those that still hold, and the last whatever its age: what an update takes the place of. */
const recent = (messages: readonly SentAlert[], checkedAt: string): SentAlert[] =>
  messages.filter(
    ({ sent }, index) => index === messages.length - 1 || Date.parse(expiresAt(sent)) > Date.parse(checkedAt),
  );

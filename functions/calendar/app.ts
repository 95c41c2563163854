import { createHash } from 'node:crypto';
import * as z from 'zod';
import { calendarFeed, type FeedItem } from '../../shared/calendar/feed.ts';
import { clocksNotSet, todayIn } from '../../shared/clocks/clocks.ts';
import { listDeadlines, type ListedDeadline } from '../../shared/clocks/list.ts';
import { problemsFromZod } from '../../shared/problems/fromZod.ts';
import { problem } from '../../shared/problems/problem.ts';
import { mayDo } from '../../shared/roles.ts';
import { undeliveredLetters } from '../digest/undelivered.ts';
import { createFamilyApp, memberOf, type App, type Call, type HttpDeps } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { notFound, refuse } from '../http/refused.ts';
import type { Calendars } from '../stores/calendars/calendars.ts';
import type { Outbox } from '../stores/outbox/outbox.ts';
import { allDeadlines, claimDeadlines, type DeadlineDeps } from './deadlines.ts';

export interface CalendarDeps extends HttpDeps, DeadlineDeps {
  readonly outbox: Outbox;
  readonly calendars: Calendars;
  /** 256 random bits, base64url. */
  readonly newToken: () => string;
}

const asked = z.discriminatedUnion('action', [
  z.strictObject({ action: z.literal('make') }),
  /** One's own; a manager's also that of somebody who has left. */
  z.strictObject({ action: z.literal('revoke'), personId: z.string().min(1).max(64).optional() }),
]);
const day = z.iso.date();
/** 256 bits in base64url are 43 characters. */
const FILE = /^([\w-]{43})\.ics$/;

const hashOf = (token: string): string => createHash('sha256').update(token).digest('hex');

/** Dates of claims, for the desk and for calendar programs. */
export function createCalendarApp(deps: CalendarDeps): App {
  const { settings, calendars } = deps;
  const today = (): string => todayIn(deps.now(), settings.timeZone);

  return createFamilyApp('calendar', deps, {
    'GET /api/deadlines': async (call) => {
      const until = untilOf(call);
      const [{ items, quiet }, undelivered] = await Promise.all([
        allDeadlines(deps, today()),
        undeliveredLetters(deps.outbox, today()),
      ]);
      return call.json({
        today: today(),
        groups: listDeadlines(items.map(asListed), today(), until),
        quiet,
        notSet: clocksNotSet(settings),
        undelivered,
      });
    },

    'GET /api/claims/{claimId}/deadlines': async (call) => {
      const found = await claimDeadlines(deps, call.req.param('claimId') ?? '', today());
      if (!found) return notFound('no-such-claim');
      return call.json({
        today: today(),
        deadlines: found.map(asListed),
        notSet: clocksNotSet(settings),
      });
    },

    'GET /api/calendar': async (call) => {
      const address = await calendars.ofPerson(memberOf(call).personId);
      return call.json({ madeAt: address?.madeAt ?? null });
    },

    'POST /api/calendar': async (call) => {
      const parsed = asked.safeParse(await readJson(call), { reportInput: true });
      if (!parsed.success) return refuse('invalid', problemsFromZod(parsed.error.issues));
      const member = memberOf(call);
      if (parsed.data.action === 'revoke') {
        const personId = parsed.data.personId ?? member.personId;
        if (personId !== member.personId && !mayDo(member, ['manager']))
          return refuse('not-allowed', problem('calendar-of-another', 'personId'));
        return call.json({ revoked: await calendars.revoke(personId) });
      }
      const token = deps.newToken();
      const madeAt = deps.now().toISOString();
      const { locale } = call.var;
      await calendars.put({ personId: member.personId, tokenSha256: hashOf(token), locale, madeAt });
      const path = `/api/calendar/${token}.ics`;
      // Told this once: only the hash is kept.
      return call.json(
        { path, url: settings.publicUrl === null ? null : new URL(path, settings.publicUrl).href, madeAt },
        201,
      );
    },

    'GET /api/calendar/{file}': async (call) => {
      const token = FILE.exec(call.req.param('file') ?? '')?.[1];
      const address = token === undefined ? null : await calendars.find(hashOf(token));
      if (!address) return notFound('no-such-calendar');
      const feed = calendarFeed({
        items: (await allDeadlines(deps, today())).items,
        today: today(),
        locale: address.locale,
        utilityName: settings.name,
        publicUrl: settings.publicUrl,
      });
      return call.body(feed, 200, {
        'content-type': 'text/calendar; charset=utf-8',
        'content-disposition': 'inline; filename="claims.ics"',
        'cache-control': 'no-store',
        'referrer-policy': 'no-referrer',
        'x-robots-tag': 'noindex',
      });
    },
  });
}

function untilOf(call: Call): string | null {
  const until = call.req.query('until');
  if (until === undefined) return null;
  if (!day.safeParse(until).success) return refuse('invalid', problem('format-date', 'until'));
  return until;
}

const asListed = ({ changes: _changes, lastRecordedAt: _at, ...deadline }: FeedItem): ListedDeadline =>
  deadline;

import { confirmedAt, toldByPeople } from '../../shared/dispatch/confirmed.ts';
import { hydrantSubject, type DispatchNotice, type NoticeSubject } from '../../shared/dispatch/notice.ts';
import { noticeView, type NoticesAnswer, type NoticeView } from '../../shared/dispatch/view.ts';
import { effectiveFacts } from '../../shared/submissions/effective.ts';
import { streamOf, type Stream } from '../../shared/submissions/envelope.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import type { Locale } from '../../shared/words/index.ts';
import type { CurrentState } from '../records/current.ts';
import type { Ledger } from '../stores/ledger/ledger.ts';
import type { Notices } from '../stores/outbox/notices.ts';
import { failedDeliveries } from './failed.ts';

export interface ReadDeps {
  readonly settings: UtilitySettings;
  readonly notices: Notices;
  readonly current: CurrentState;
  readonly ledger: Ledger;
  readonly now: () => Date;
}

/** Far more than one outage ever brings. */
const MOST_SHOWN = 30;

const answer = ({ settings }: ReadDeps, views: readonly NoticeView[]): NoticesAnswer => ({
  on: settings.dispatchMessages?.on === true,
  tooOldHours: settings.dispatchMessages?.tooOldHours ?? 0,
  notices: views
    .toSorted((a, b) => Date.parse(b.madeAt) - Date.parse(a.madeAt) || b.number - a.number)
    .slice(0, MOST_SHOWN),
});

/** Every message that speaks of a strike, whichever hydrant it named then; null for a strike that there is not. */
export async function noticesOfStrike(
  deps: ReadDeps,
  strikeId: string,
  locale: Locale,
): Promise<NoticesAnswer | null> {
  const { current, notices } = deps;
  const strike = await current.strike(strikeId);
  if (!strike) return null;
  const ids = new Set([strike.strikeId, ...strike.memberIds]);
  const marked = await Promise.all([...ids].map((id) => notices.subjectsOf(id)));
  const own = strike.hydrantIds.map(hydrantSubject);
  const speaksOfIt = (notice: DispatchNotice, latest: boolean): boolean =>
    notice.outageIds.some((id) => ids.has(id)) ||
    // A hydrant that was out already: what dispatch knows of it is what it was told then.
    (latest && notice.what === 'out' && strike.returnedAt === null && own.includes(notice.subject));
  const streams = [
    ...[...ids].map((id) => streamOf({ type: 'strike', strikeId: id })),
    ...strike.hydrantIds.map((hydrantId) => streamOf({ type: 'hydrant', hydrantId })),
  ];
  return answer(deps, await views(deps, new Set([...marked.flat(), ...own]), streams, speaksOfIt, locale));
}

/** Every message about a hydrant's outages that are open, and the last one. */
export async function noticesOfHydrant(
  deps: ReadDeps,
  hydrantId: string,
  locale: Locale,
): Promise<NoticesAnswer> {
  const status = await deps.current.hydrant(hydrantId);
  const open = new Set(status?.open.map(({ outageId }) => outageId));
  const strikes = await Promise.all([...open].map((outageId) => deps.current.strike(outageId)));
  const streams = [
    streamOf({ type: 'hydrant', hydrantId }),
    ...strikes.flatMap((strike) =>
      (strike?.memberIds ?? []).map((strikeId) => streamOf({ type: 'strike', strikeId })),
    ),
  ];
  const speaksOfIt = ({ outageIds }: DispatchNotice, latest: boolean): boolean =>
    latest || outageIds.some((id) => open.has(id));
  return answer(deps, await views(deps, new Set([hydrantSubject(hydrantId)]), streams, speaksOfIt, locale));
}

/** Messages of the last days that somebody did not get and nobody has made good by telephone. */
export async function undeliveredNotices(deps: ReadDeps, locale: Locale): Promise<NoticesAnswer> {
  const failed = await failedDeliveries(deps.notices, deps.now());
  const subjects = new Set(failed.map(({ subject }) => subject));
  const numbers = new Set(failed.map(({ subject, number }) => `${subject}\n${number}`));
  const streams: Stream[] = [];
  for (const subject of subjects)
    for (const { value } of await deps.notices.of(subject)) {
      if (value.facts.hydrantId !== null)
        streams.push(streamOf({ type: 'hydrant', hydrantId: value.facts.hydrantId }));
      for (const outageId of value.outageIds) {
        const strike = await deps.current.strike(outageId);
        streams.push(...(strike?.memberIds ?? []).map((id) => streamOf({ type: 'strike', strikeId: id })));
      }
    }
  const found = await views(
    deps,
    subjects,
    streams,
    ({ subject, number }) => numbers.has(`${subject}\n${number}`),
    locale,
  );
  return answer(
    deps,
    found.filter((view) => view.confirmedAt === null),
  );
}

async function views(
  deps: ReadDeps,
  subjects: ReadonlySet<NoticeSubject>,
  streams: readonly Stream[],
  wanted: (notice: DispatchNotice, latest: boolean) => boolean,
  locale: Locale,
): Promise<NoticeView[]> {
  const { settings, notices, ledger, current } = deps;
  const recorded = await Promise.all(
    [...new Set(streams)].map((stream) => ledger.readStream(stream, { personal: false })),
  );
  const told = toldByPeople(effectiveFacts(withoutTrials(recorded.flat())).facts);
  const bySubject = await Promise.all(
    [...subjects].map(async (subject) => {
      const all = (await notices.of(subject)).map(({ value }) => value);
      const last = all.at(-1)?.number;
      return all
        .filter((notice) => wanted(notice, notice.number === last))
        .map((notice) => ({ notice, latest: notice.number === last }));
    }),
  );
  return Promise.all(
    bySubject.flat().map(async ({ notice, latest }) =>
      noticeView({
        notice,
        latest,
        deliveries: (await notices.deliveriesOf(notice)).map(({ value }) => value),
        confirmedAt: confirmedAt(notice, told),
        strikeId: (await current.strike(notice.outageIds[0] ?? ''))?.strikeId ?? null,
        settings,
        locale,
      }),
    ),
  );
}

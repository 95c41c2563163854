import { jobCodes } from '../../shared/costs/codes.ts';
import { editionsOnRecord } from '../../shared/costs/editionsOnRecord.ts';
import { localDate } from '../../shared/costs/days.ts';
import { ofKind } from '../../shared/submissions/effective.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { memberOf, type RouteHandler } from '../http/app.ts';
import type { RecordsDeps } from './deps.ts';
import { factsOf, readStreams } from './facts.ts';

/** The settings that anybody may see. The roll of people and the letterhead stay inside. */
const openSettings = ({
  name,
  timeZone,
  locale,
  units,
  emergencyPhone,
  dispatch,
  flowTest = {},
}: UtilitySettings) => ({
  name,
  timeZone,
  locale,
  units,
  emergencyPhone,
  dispatch,
  flowTest,
});

/** The utility itself: its settings, its people's sign-in, its hydrant models and rate books. */
export function utilityRoutes({ settings, signIn, ledger, now }: RecordsDeps): Record<string, RouteHandler> {
  return {
    'GET /api/utility': async (call) => call.json({ ...openSettings(settings), signIn: signIn ?? null }),

    'GET /api/me': async (call) => {
      const { personId, name, roles } = memberOf(call);
      // Names go to those who sign in, so that a story reads "by Odalys" and not by a number; never to the public.
      const people = settings.people.map((one) => ({ personId: one.personId, name: one.name }));
      return call.json({ personId, name, roles, people, utility: openSettings(settings) });
    },

    'GET /api/models': async (call) => {
      const recorded = ofKind(await factsOf(ledger, ['utility']), 'hydrant-model');
      // The latest record of a model id stands.
      const latest = new Map(recorded.map(({ fact: { body } }) => [body.modelId, body]));
      return call.json({ models: [...latest.values()] });
    },

    'GET /api/job-codes': async (call) => {
      const editions = ofKind(await factsOf(ledger, ['utility']), 'rate-book');
      const today = localDate(now().toISOString(), settings.timeZone);
      return call.json(
        jobCodes(
          today,
          editions.map(({ fact: { body } }) => body),
        ),
      );
    },

    'GET /api/rate-books': async (call) =>
      call.json(editionsOnRecord(await readStreams(ledger, ['utility']))),
  };
}

import { mayRead, writingProblems } from '../../shared/access.ts';
import { pastEditionProblems, sameEdition } from '../../shared/costs/newEdition.ts';
import { correctionProblems } from '../../shared/submissions/correctionTarget.ts';
import { futureProblems } from '../../shared/submissions/futures.ts';
import { correctionKind } from '../../shared/submissions/kinds.ts';
import { formOf, parseSubmission, streamOfSubmission } from '../../shared/submissions/submission.ts';
import { withoutTrials } from '../../shared/submissions/trials.ts';
import type { UtilitySettings } from '../../shared/utility/settings.ts';
import { createFamilyApp, memberOf, type App, type HttpDeps } from '../http/app.ts';
import { readJson } from '../http/json.ts';
import { refuse } from '../http/refused.ts';
import { append, type AppendDeps } from './append.ts';

export type SubmissionsDeps = HttpDeps &
  AppendDeps & { readonly settings: Pick<UtilitySettings, 'timeZone'> };

/** `POST /api/submissions`: the way in for people, phones and imports alike. */
export function createSubmissionsApp(deps: SubmissionsDeps): App {
  return createFamilyApp('submissions', deps, {
    'POST /api/submissions': async (call) => {
      const member = memberOf(call);
      const parsed = parseSubmission(await readJson(call));
      if (!parsed.ok) return refuse('invalid', parsed.problems);
      const submission = parsed.value;

      const mayNot = writingProblems(member, submission);
      if (mayNot.length > 0) return refuse('not-allowed', mayNot);
      const notYet = futureProblems(submission, deps.settings.timeZone);
      if (notYet.length > 0) return refuse('invalid', notYet);

      if (submission.kind === correctionKind) {
        const recorded = await deps.ledger.readStream(streamOfSubmission(submission), { personal: false });
        const wrong = correctionProblems(submission, recorded, (kind) => mayRead(member, kind));
        if (wrong.length > 0) return refuse('invalid', wrong);
      }

      // A trial takes no edition's name, and no edition is a repeat of one.
      if (formOf(submission).kind === 'rate-book' && submission.test !== true) {
        const recorded = withoutTrials(await deps.ledger.readStream('utility', { personal: false }));
        const same = sameEdition(submission, recorded);
        if (same)
          return call.json({
            submissionId: submission.submissionId,
            outcome: 'repeat',
            recordedAt: same.recordedAt,
            repeats: same.submissionId,
          });
        const past = pastEditionProblems(submission, recorded);
        if (past.length > 0)
          return refuse(past.some(({ code }) => code === 'edition-not-edited') ? 'invalid' : 'taken', past);
      }

      const { outcome, recordedAt } = await append(deps, submission, member);
      const { submissionId } = submission;
      return call.json({ submissionId, outcome, recordedAt }, outcome === 'accepted' ? 201 : 200);
    },
  });
}

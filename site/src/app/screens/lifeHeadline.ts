import type { Submission } from '../../../../shared/submissions/submission.ts';
import type { Wording } from '../core/words.ts';

/** The one thing to know of an event of a claim's life; null for what is none. */
export function lifeHeadline(submission: Submission, words: Wording): string | null {
  const { money, t, day } = words;
  const joined = (...parts: readonly (string | null | undefined)[]): string =>
    parts.filter(Boolean).join(' · ');
  switch (submission.kind) {
    case 'claim-acknowledged':
      return joined(submission.body.by, submission.body.reference);
    case 'adjuster-assigned':
      return joined(submission.body.adjuster.name, submission.body.company, submission.body.adjuster.phone);
    case 'information-asked':
    case 'information-given':
      return submission.body.what;
    case 'line-disputed':
      return submission.body.lines
        .map(
          (line) => `${t(`value.shortReason.${line.reason}`)}, ${money(line.disputedCents)}: “${line.words}”`,
        )
        .join(' ');
    case 'dispute-answered':
      return joined(t(`value.disputeOutcome.${submission.body.outcome}`), submission.body.reason);
    case 'offer-made':
      return money(submission.body.amountCents);
    case 'offer-answered':
      return t(`value.offerAnswer.${submission.body.answer}`);
    case 'payment-received': {
      const { amountCents, how, marked, deposited } = submission.body;
      return joined(
        money(amountCents),
        t(`value.paidHow.${how}`),
        marked === 'not-marked' ? null : t(`value.marked.${marked}`),
        deposited === 'deposited' ? null : t(`value.deposited.${deposited}`),
      );
    }
    case 'payment-reversed':
      return joined(money(submission.body.amountCents), t(`value.reversedWhy.${submission.body.why}`));
    case 'refund-paid':
      return joined(money(submission.body.amountCents), submission.body.reason);
    case 'recovery-shared':
      return joined(money(submission.body.amountCents), submission.body.with);
    case 'claim-denied':
      return `“${submission.body.words}”`;
    case 'claim-referred':
      return joined(t(`value.referredTo.${submission.body.to}`), submission.body.name);
    case 'restitution-ordered':
      return joined(money(submission.body.amountCents), submission.body.court);
    case 'payment-plan':
      return submission.body.instalments
        .map(({ dueOn, amountCents }) => `${day(dueOn)}: ${money(amountCents)}`)
        .join(' · ');
    case 'letter-sent':
      return t(`letter.kind.${submission.body.letter}`);
    case 'deadline-answered':
      return joined(t(`value.deadlineAnswer.${submission.body.answer}`), submission.body.reason);
    case 'legal-hold':
      return joined(t(`value.hold.${submission.body.hold}`), submission.body.reason);
    case 'written-off':
      return joined(
        money(submission.body.amountCents),
        t(`value.writeOff.${submission.body.reason}`),
        submission.body.authority,
      );
    case 'claim-closed':
      return joined(t(`value.closedHow.${submission.body.how}`), submission.body.reason);
    case 'claim-reopened':
      return submission.body.reason;
    default:
      return null;
  }
}

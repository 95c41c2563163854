import type { Statement } from '../../costs/statement.ts';
import type { StatementLine } from '../../costs/line.ts';
import { formatCents } from '../../costs/money.ts';
import type { ClaimRules } from '../../payments/rules.ts';
import type { ShortReason } from '../../submissions/forms/claimLife/common.ts';
import { ofKind, type Effective } from '../../submissions/effective.ts';
import { say, type Locale } from '../../words/index.ts';
import { withAuthority, withContrary } from './authorities.ts';

/** One thing that a payer did not accept. */
export interface Point {
  readonly lineId: string | null;
  readonly reason: ShortReason;
  /** Null where no sum was named: a denial. */
  readonly cents: number | null;
  readonly words: string | null;
}

/** What a dispute, a short payment or a denial says, point by point; empty where `answers` names none. */
export function pointsOf(facts: readonly Effective[], answers: string | null): readonly Point[] {
  const at = <T extends { readonly fact: { readonly submissionId: string } }>(
    all: readonly T[],
  ): T | undefined => all.find(({ fact }) => fact.submissionId === answers);
  const dispute = at(ofKind(facts, 'line-disputed'));
  if (dispute)
    return dispute.fact.body.lines.map(({ lineId, reason, disputedCents, words }) => ({
      lineId,
      reason,
      cents: disputedCents,
      words,
    }));
  const payment = at(ofKind(facts, 'payment-received'));
  if (payment)
    return payment.fact.body.lines
      .filter(({ shortCents }) => shortCents > 0)
      .map(({ lineId, reason, shortCents, words }) => ({
        lineId,
        reason: reason ?? 'other',
        cents: shortCents,
        words,
      }));
  const denial = at(ofKind(facts, 'claim-denied'));
  if (denial)
    return denial.fact.body.reasons.map((reason) => ({
      lineId: null,
      reason,
      cents: null,
      words: denial.fact.body.words,
    }));
  return [];
}

/** Within a sentence. */
const lowerFirst = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

const authorityOf = ({ authority, editionId }: StatementLine, locale: Locale): string =>
  authority === null
    ? ''
    : say(locale, 'letter.reply.authority', {
        title: authority.title,
        edition: authority.edition ?? editionId ?? '',
        page: authority.page ?? 'none',
      });

/** The courts of the state come before a federal rule; where they deduct, no authority for the contrary is claimed. */
function authoritiesFor(reason: ShortReason, { depreciation: here }: ClaimRules, locale: Locale): string[] {
  const published = withAuthority.includes(reason) ? [say(locale, `letter.authority.${reason}`)] : [];
  if (reason !== 'depreciation' || !here) return published;
  if (here.position !== 'not-deducted') return [];
  return [say(locale, 'letter.authority.depreciation-here', { citation: here.citation }), ...published];
}

/**
 * The reply to each point, a paragraph each: what the line is and stands on, its rate with the paper behind it, its sum,
 * and the published authority where there is one. Drafted from what is recorded; a person reads and sends it.
 */
export function replyText(
  points: readonly Point[],
  statement: Statement,
  locale: Locale,
  rules: ClaimRules = {},
): string | null {
  if (points.length === 0) return null;
  return points
    .map(({ lineId, reason, cents }, index) => {
      const line = statement.lines.find((each) => each.lineId === lineId);
      const head = say(locale, 'letter.reply.point', {
        number: index + 1,
        what: line
          ? say(locale, `packet.line.${line.kind}`, {
              description: line.description,
              item: line.item,
              quantity: `$${line.quantity}`,
              rate: line.rateUsd === null ? '' : `$${line.rateUsd}`,
            })
          : say(locale, 'letter.reply.whole'),
        known: cents === null ? 'no' : 'yes',
        amount: cents === null ? '' : formatCents(cents),
        reason: lowerFirst(say(locale, `value.shortReason.${reason}`)),
      });
      const stands = line
        ? [
            say(locale, 'letter.reply.stands', {
              records: line.submissionIds.length,
              arithmetic: line.arithmetic,
            }),
            authorityOf(line, locale),
          ]
        : [];
      return [
        head,
        ...stands,
        say(locale, `letter.reply.${reason}`),
        ...authoritiesFor(reason, rules, locale),
      ]
        .filter((sentence) => sentence !== '')
        .join(' ');
    })
    .join('\n\n');
}

/** What the clerk should know before a reply goes out, because published decisions differ. */
export const contraryTo = (points: readonly Point[]): readonly ShortReason[] =>
  [...new Set(points.map(({ reason }) => reason))].filter((reason) => withContrary.includes(reason));

import type { ClaimState } from '../claims/state.ts';
import type { StrikeState } from '../strikes/state.ts';
import { localDate, type LocalDate } from './days.ts';
import { editionOn } from './editions.ts';
import type { EditionRecord } from './editionsOnRecord.ts';
import type { RateBookEdition } from './rateBook.ts';

export interface EditionUse {
  /** Issued packets that were built from it. Their figures stay. */
  readonly packets: readonly {
    readonly claimId: string;
    readonly claimNumber: string;
    readonly revision: number;
  }[];
  /** Claims not closed whose bill takes rates from it now, and which other edition would come in its place. */
  readonly bills: readonly {
    readonly claimId: string;
    readonly claimNumber: string;
    /** On the first such day; null: none, and lines would have no amount. */
    readonly insteadId: string | null;
  }[];
}

/** A strike that stays open for years is not counted out day by day. */
const MOST_DAYS = 400;

/**
 * Who an edition's withdrawal would touch. A bill takes rates by the day of the strike, of work, of issue: from the
 * strike until the hydrant is back, and until `today` (`YYYY-MM-DD`) while it is not. Pure.
 */
export function editionUse(
  { editionId, submissionId }: Pick<EditionRecord, 'editionId' | 'submissionId'>,
  editions: readonly RateBookEdition[],
  claims: readonly ClaimState[],
  strikes: readonly StrikeState[],
  timeZone: string,
  today: LocalDate,
): EditionUse {
  const others = editions.filter((edition) => edition.editionId !== editionId);
  return {
    packets: claims.flatMap(({ claimId, claimNumber, packets }) =>
      packets
        .filter(({ builtFrom }) => builtFrom.includes(submissionId))
        .map(({ revision }) => ({ claimId, claimNumber, revision })),
    ),
    bills: claims.flatMap(({ claimId, claimNumber, strikeId, life }) => {
      const strike = strikes.find(({ memberIds }) => memberIds.includes(strikeId));
      if (life.closed || !strike) return [];
      const from = localDate(strike.since, timeZone);
      const to = strike.returnedAt === null ? today : localDate(strike.returnedAt, timeZone);
      const day = daysFrom(from, to).find(
        (date) => editionOn(date, editions).edition?.editionId === editionId,
      );
      return day === undefined
        ? []
        : [{ claimId, claimNumber, insteadId: editionOn(day, others).edition?.editionId ?? null }];
    }),
  };
}

function daysFrom(from: LocalDate, to: LocalDate): LocalDate[] {
  const days = [from];
  for (let at = Date.parse(`${from}T00:00:00Z`) + DAY_MS; days.length < MOST_DAYS; at += DAY_MS) {
    const date = new Date(at).toISOString().slice(0, 10);
    if (date > to) break;
    days.push(date);
  }
  return days;
}
const DAY_MS = 86_400_000;

import { ofKind, type Effective } from '../submissions/effective.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';
import type { AuditCase, Objection, Rule } from './case.ts';
import { evidenceRules } from './rules/evidence.ts';
import { laborRules } from './rules/labor.ts';
import { liabilityRules } from './rules/liability.ts';
import { machineRules } from './rules/machines.ts';
import { materialRules } from './rules/materials.ts';
import { payerRules } from './rules/payer.ts';
import { rateRules } from './rules/rates.ts';
import { waterRules } from './rules/water.ts';

/** Every rule, in the order in which a reader comes upon what it asks. */
export const rules: readonly Rule[] = [
  ...liabilityRules,
  ...payerRules,
  ...evidenceRules,
  ...laborRules,
  ...machineRules,
  ...materialRules,
  ...rateRules,
  ...waterRules,
];

/**
 * The packet as an insurer would read it: each likely objection once, those with most money at stake first. Pure; the
 * same case gives the same list. No more is ever at stake than the statement's total.
 */
export function objectionsTo(audited: AuditCase): Objection[] {
  const found = rules.flatMap(({ rule, add, find }) =>
    find(audited).map(({ about, atStakeCents, params = {}, lineId, add: here = add, of }): Objection => ({
      key: about === undefined ? rule : `${rule}:${about}`,
      rule,
      atStakeCents: Math.max(0, Math.min(atStakeCents, audited.statement.totalCents)),
      params,
      lineId: lineId ?? null,
      add: here,
      corrects: recordsToCorrect(audited, here, of ?? lineOf(audited, lineId)?.submissionIds ?? []),
    })),
  );
  const once = [...new Map(found.map((objection) => [objection.key, objection])).values()];
  return once
    .map((objection, index) => ({ objection, index }))
    .sort((a, b) => b.objection.atStakeCents - a.objection.atStakeCents || a.index - b.index)
    .map(({ objection }) => objection);
}

const lineOf = ({ statement }: AuditCase, lineId: string | undefined) =>
  statement.lines.find((line) => line.lineId === lineId);

/**
 * What is recorded once of a strike is put right by a correction: a second report, repair or party would only
 * contradict the first. Those that the objection names; where it names none, all that there are.
 */
function recordsToCorrect(audited: AuditCase, kind: FactKind | null, named: readonly string[]): string[] {
  if (kind !== 'repair' && kind !== 'strike' && kind !== 'party') return [];
  const known = ofKind(audited.facts, kind)
    .map(({ fact }) => fact.submissionId)
    .filter((id) => kind !== 'party' || id === audited.claim.partyId);
  const meant = known.filter((id) => named.includes(id));
  return meant.length > 0 ? meant : known;
}

export interface AnsweredObjection extends Objection {
  /** What a person said to it, and who; null while nobody did. */
  readonly answered:
    | (Pick<BodyOf<'objection-answer'>, 'answer' | 'reason'> & {
        readonly personId: string;
        readonly at: string;
        readonly submissionId: string;
      })
    | null;
}

/** Objections with what a person said to each; the last word recorded counts. */
export function withAnswers(
  objections: readonly Objection[],
  claimFacts: readonly Effective[],
): AnsweredObjection[] {
  const answers = new Map(
    ofKind(claimFacts, 'objection-answer').map(({ fact, recordedAt }) => [
      fact.body.objection,
      {
        answer: fact.body.answer,
        reason: fact.body.reason,
        personId: fact.person.personId,
        at: recordedAt,
        submissionId: fact.submissionId,
      },
    ]),
  );
  return objections.map((objection) => ({ ...objection, answered: answers.get(objection.key) ?? null }));
}

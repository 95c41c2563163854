import type { Hydrant } from '../inventory/hydrant.ts';
import { joinedStrikes } from '../strikes/sameStrike.ts';
import { foldStrike } from '../strikes/state.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import { returnsOfOutage } from './hydrantStatus.ts';
import { returnEffect, valveTurns, type ReturnEffect } from './returnEffect.ts';

type Return = Effective<'return-to-service'>;

export interface KnownOfHydrant {
  readonly hydrantType: Hydrant['type'];
  /** Effective facts of its own stream and of its strikes, as far as they are known where this is asked. */
  readonly facts: readonly Effective[];
  /** What is told of outages, of which not every fact is here, or none. */
  readonly told: readonly { readonly outageId: string; readonly cause: string; readonly since: string }[];
}

/**
 * What a return would do, by what is known before it is recorded: the folds of the record, asked for every outage that
 * it closes. It takes effect when it does for each of them; otherwise every hold of any is told, once.
 */
export function returnAsKnown(returned: Return, { hydrantType, facts, told }: KnownOfHydrant): ReturnEffect {
  const { submissionId, body } = returned.fact;
  const all = [
    ...facts.filter(({ fact }) => fact.submissionId !== submissionId),
    returned as unknown as Effective,
  ];
  const joined = joinedStrikes(
    ofKind(all, 'link').flatMap(({ fact: { subject, body: said } }) =>
      subject.type === 'strike' ? [{ a: subject.strikeId, b: said.sameAsStrikeId }] : [],
    ),
  );
  const goesBy = (id: string): string => joined.get(id) ?? id;
  const ofStrike = (id: string, { fact: { subject } }: Effective): boolean =>
    subject.type === 'strike' && goesBy(subject.strikeId) === goesBy(id);

  const effects = body.closes.flatMap((outageId): readonly ReturnEffect[] => {
    const own = all.filter((item) => ofStrike(outageId, item));
    if (own.length > 0) {
      const ids = own.flatMap(({ fact: { subject } }) =>
        subject.type === 'strike' ? [subject.strikeId] : [],
      );
      return foldStrike({
        strikeId: goesBy(outageId),
        memberIds: [...new Set([outageId, goesBy(outageId), ...ids])],
        facts: own,
        aroundFacts: all.filter((item) => !own.includes(item)),
        hydrantType,
        toldSince: told.find((each) => goesBy(each.outageId) === goesBy(outageId))?.since,
      }).returns;
    }
    const outage = ofKind(all, 'outage').find(({ fact }) => fact.submissionId === outageId);
    if (outage) return returnsOfOutage(outage, hydrantType, all);
    const known = told.find((each) => each.outageId === outageId);
    const question = {
      hydrantType,
      cause: known?.cause === 'strike' ? ('strike' as const) : ('other' as const),
      began: known?.since ?? body.returnedAt,
      hydrantsDiffer: false,
      repairs: [],
      valveTurns: valveTurns(all),
    };
    return [returnEffect(returned, question)];
  });
  return together(
    effects.filter(({ returnId }) => returnId === submissionId),
    returned,
  );
}

function together(effects: readonly ReturnEffect[], { fact: { submissionId, body } }: Return): ReturnEffect {
  const once = <T>(items: readonly T[]): T[] => [
    ...new Map(items.map((item) => [JSON.stringify(item), item])).values(),
  ];
  const pumped = effects.find((effect) => effect.pumped)?.pumped;
  return {
    returnId: submissionId,
    returnedAt: body.returnedAt,
    takesEffect: effects.every(({ takesEffect }) => takesEffect),
    holds: once(effects.flatMap(({ holds }) => holds)),
    deferred: once(effects.flatMap(({ deferred }) => deferred)),
    ...(pumped ? { pumped } : {}),
  };
}

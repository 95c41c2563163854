import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import { stillClosed, valveTurns } from '../../../../shared/outages/returnEffect.ts';
import type { HoldRecord } from '../../../../shared/procedure/holdPoints.ts';
import { holdRecord, saidOfRepair, type SaidOfRepair } from '../../../../shared/procedure/holdRecord.ts';
import {
  planned,
  procedureFor,
  scopeFor,
  type PlannedStep,
  type Scope,
} from '../../../../shared/procedure/procedureFor.ts';
import { procedureSteps, type ProcedureStep } from '../../../../shared/procedure/steps.ts';
import type { DamageClass } from '../../../../shared/strikes/damage.ts';
import { effectiveFacts, ofKind, type Effective } from '../../../../shared/submissions/effective.ts';
import { readLocalTime } from './localTime.ts';
import { rowsOf, textOf, type Values } from './nodes.ts';
import type { FormContext } from './spec.ts';

/** A step as another record has it. */
export interface RecordedStep {
  readonly step: ProcedureStep;
  readonly at: string;
  readonly byWorkerId: string;
}

export interface ProcedureSoFar {
  readonly type: Hydrant['type'];
  readonly scope: Scope;
  /** What this procedure asks for, and whatever else is ticked or recorded, in order. */
  readonly steps: readonly (PlannedStep & { readonly asked: boolean })[];
  /** The latest record of each step, by anybody. */
  readonly recorded: ReadonlyMap<ProcedureStep, RecordedStep>;
  /** What hold points are judged by: earlier records and what is ticked here. */
  readonly record: HoldRecord;
  /** The valve that is recorded to have shut the water off, last, and not to have been reopened. */
  readonly shutValve: { readonly valveId: string; readonly at: string; readonly byWorkerId: string } | null;
}

/** Steps that other forms record: tests with their readings, the mark and the word to dispatch. */
function recordedByOthers(facts: readonly Effective[]): RecordedStep[] {
  const tested = ofKind(facts, 'flow-test').map(({ fact: { body, person } }): RecordedStep => ({
    step: 'flow-tested',
    at: body.testedAt,
    byWorkerId: body.testedByWorkerIds[0] ?? person.personId,
  }));
  const returned = ofKind(facts, 'return-to-service').flatMap(
    ({ fact: { body, person } }): RecordedStep[] => [
      ...(body.markRemovedAt === null
        ? []
        : [{ step: 'marked-off' as const, at: body.markRemovedAt, byWorkerId: person.personId }]),
      ...(body.dispatch === null
        ? []
        : [
            {
              step: 'dispatch-told' as const,
              at: body.dispatch.at,
              byWorkerId: body.dispatch.toldByWorkerId,
            },
          ]),
    ],
  );
  return [...tested, ...returned];
}

/**
 * How the procedure stands with what is recorded and what is ticked in the form. `values`: what is typed in the repair;
 * `submissionId`: this form's own, whose record (a correction opens it) is not counted twice.
 */
export function procedureSoFar(
  { history, hydrant, around }: Pick<FormContext, 'history' | 'hydrant' | 'around'>,
  values: Values,
  submissionId: string,
  zone: string,
): ProcedureSoFar {
  const { facts } = effectiveFacts(history);
  const aroundFacts = effectiveFacts(around).facts;
  const recordedRepairs = ofKind(facts, 'repair').filter(({ fact }) => fact.submissionId !== submissionId);
  const earlier = recordedRepairs.map(({ fact }) => fact.body);
  const type = hydrant?.type ?? 'unknown';
  const damage = textOf(values['damage']) || (earlier.findLast((body) => body.damage !== null)?.damage ?? '');
  const said = textOf(values['needsDig']);
  const needsDig =
    said === ''
      ? (earlier.findLast((body) => body.needsDig !== undefined)?.needsDig ?? false)
      : said === 'yes';
  const scope = scopeFor(damage === '' ? null : (damage as DamageClass), needsDig);

  const before = [
    ...earlier.flatMap(({ steps }) => steps).map(({ doneAt: at, ...each }) => ({ ...each, at })),
    ...recordedByOthers(facts),
  ];
  const recorded = new Map<ProcedureStep, RecordedStep>();
  for (const each of before) {
    const last = recorded.get(each.step);
    if (!last || Date.parse(each.at) >= Date.parse(last.at)) recorded.set(each.step, each);
  }
  const rows = rowsOf(values['steps']).flatMap((row) => {
    const read = readLocalTime(textOf(row['doneAt']), zone);
    return read.ok && textOf(row['byWorkerId']).trim() !== ''
      ? [{ step: textOf(row['step']) as ProcedureStep, atMs: Date.parse(read.instant) }]
      : [];
  });
  const typed: SaidOfRepair = {
    done: rows,
    locateTicket: textOf(values['dig.locateTicket']).trim() !== '',
  };
  const ticked = new Set(rowsOf(values['steps']).map((row) => textOf(row['step'])));
  const asked = new Map(procedureFor(type, scope).map((each) => [each.step, each]));
  const turned = [...facts, ...aroundFacts];
  const closed = stillClosed(valveTurns(turned), Number.POSITIVE_INFINITY);
  const shut = ofKind(turned, 'valve-operation')
    .map(({ fact }) => fact.body)
    .filter(({ valveId }) => closed.includes(valveId))
    .sort((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .findLast(
      ({ action, valve, waterShut }) => action === 'closed' && (valve === 'isolation' || waterShut === 'yes'),
    );
  return {
    type,
    scope,
    steps: procedureSteps
      .filter((step) => asked.has(step) || recorded.has(step) || ticked.has(step))
      .map((step) => ({ ...(asked.get(step) ?? planned(step, scope)), asked: asked.has(step) })),
    recorded,
    record: holdRecord(
      type,
      [typed, ...recordedRepairs.map((item) => saidOfRepair(item.fact.body, item))],
      facts,
      aroundFacts,
    ),
    shutValve: shut ? { valveId: shut.valveId, at: shut.at, byWorkerId: shut.byWorkerId } : null,
  };
}

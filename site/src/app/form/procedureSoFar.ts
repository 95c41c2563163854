import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { HoldRecord } from '../../../../shared/procedure/holdPoints.ts';
import {
  planned,
  procedureFor,
  scopeFor,
  type PlannedStep,
  type Scope,
} from '../../../../shared/procedure/procedureFor.ts';
import { procedureSteps, type ProcedureStep } from '../../../../shared/procedure/steps.ts';
import { waterLetInByValves } from '../../../../shared/procedure/waterLetIn.ts';
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
  /** The valve that is recorded to have shut the water off, last. */
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
  { history, hydrant, ofHydrant }: Pick<FormContext, 'history' | 'hydrant' | 'ofHydrant'>,
  values: Values,
  submissionId: string,
  zone: string,
): ProcedureSoFar {
  const { facts } = effectiveFacts(history);
  // A valve may be turned from the hydrant's own page: the server counts that turn, and so must the form.
  const turned = [...facts, ...effectiveFacts(ofHydrant).facts];
  const earlier = ofKind(facts, 'repair')
    .filter(({ fact }) => fact.submissionId !== submissionId)
    .map(({ fact }) => fact.body);
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
  const done = [...before.map(({ step, at }) => ({ step, atMs: Date.parse(at) })), ...rows];
  const ticked = new Set(rowsOf(values['steps']).map((row) => textOf(row['step'])));
  const asked = new Map(procedureFor(type, scope).map((each) => [each.step, each]));
  const shut = ofKind(turned, 'valve-operation')
    .map(({ fact }) => fact.body)
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
    record: {
      type,
      done,
      waterLetInMs: [
        ...waterLetInByValves(turned),
        ...done.filter(({ step }) => step === 'refilled-slowly').map(({ atMs }) => atMs),
      ],
      locateTicketKnown:
        textOf(values['dig.locateTicket']).trim() !== '' ||
        earlier.some(({ dig }) => dig?.locateTicket !== undefined),
    },
    shutValve: shut ? { valveId: shut.valveId, at: shut.at, byWorkerId: shut.byWorkerId } : null,
  };
}

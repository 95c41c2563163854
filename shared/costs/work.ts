import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf } from '../submissions/submission.ts';
import { localDate, type LocalDate } from './days.ts';

type Repair = BodyOf<'repair'>;

/** One record of work: what a repair submission says of people, machines, parts and contractors. */
export interface WorkRecord extends Pick<Repair, 'crew' | 'machines' | 'parts' | 'contractors'> {
  readonly submissionId: string;
  /** The day on which stock counts as issued: the day the work began, as the form holds no day of issue. */
  readonly issuedOn: LocalDate;
}

/** Water lost as a person recorded it. The estimate from what a crew saw is a figure of this kind, with its method. */
export interface WaterLost {
  readonly gallons: number;
  /** How the figure was come by, in the words of who gave it. */
  readonly basis: string;
  readonly submissionId?: string | undefined;
}

/** Everything a statement is computed from, apart from the rates. */
export interface Work {
  readonly timeZone: string;
  /** The day of the strike, and how it is known. Machines and tariffs take their rates from it. */
  readonly strike: { readonly date: LocalDate; readonly basis: 'struck' | 'reported' | 'first-record' };
  readonly records: readonly WorkRecord[];
  readonly flowTests: readonly {
    readonly submissionId: string;
    readonly testedAt: string;
    readonly purpose: BodyOf<'flow-test'>['purpose'];
  }[];
  /** The crews found the main valve holding and nothing flowing: no water was lost. */
  readonly mainValveHeld: boolean;
  readonly waterLost: WaterLost | null;
}

const earliest = (instants: readonly (string | null)[]): string | null =>
  instants.filter((at) => at !== null).sort((a, b) => Date.parse(a) - Date.parse(b))[0] ?? null;

/** The first moment at which this record says that somebody worked. */
export function beganAt({ crew, machines }: Pick<WorkRecord, 'crew' | 'machines'>): string | null {
  return earliest([
    ...crew.flatMap(({ work }) => work.map(({ from }) => from)),
    ...machines.flatMap(({ inUse }) => inUse.map(({ from }) => from)),
  ]);
}

/**
 * The work of one strike, from its facts as they stand after corrections (so a corrected amount leaves no trace).
 * Give the facts of every stream that links joined into the strike. `waterLost` overrides what the facts record.
 * Flow tests count when they stand in the strike's own streams: a test on the hydrant's stream belongs to no strike.
 */
export function workOf(facts: readonly Effective[], timeZone: string, waterLost: WaterLost | null): Work {
  const strikes = ofKind(facts, 'strike').map(({ fact }) => fact);
  const found = strikes.flatMap(({ body }) => (body.found ? [body.found] : []));
  const struckAt = earliest(strikes.map(({ body }) => body.struckAt));
  const reportedAt = earliest(
    strikes.flatMap(({ body, occurredAt }) => [body.reportedBy.reportedAt, body.arrivedAt, occurredAt]),
  );
  const firstAt = earliest(facts.map(({ fact }) => fact.occurredAt));
  const day = (at: string): LocalDate => localDate(at, timeZone);
  const ofStrike = facts.filter(({ fact }) => fact.subject.type === 'strike');
  return {
    timeZone,
    strike:
      struckAt !== null
        ? { date: day(struckAt), basis: 'struck' }
        : reportedAt !== null
          ? { date: day(reportedAt), basis: 'reported' }
          : { date: firstAt === null ? '' : day(firstAt), basis: 'first-record' },
    records: ofKind(facts, 'repair').map(({ fact: { body, submissionId, occurredAt } }) => ({
      submissionId,
      issuedOn: day(beganAt(body) ?? occurredAt),
      crew: body.crew,
      machines: body.machines,
      parts: body.parts,
      contractors: body.contractors,
    })),
    flowTests: ofKind(ofStrike, 'flow-test').map(({ fact: { body, submissionId } }) => ({
      submissionId,
      testedAt: body.testedAt,
      purpose: body.purpose,
    })),
    mainValveHeld:
      found.length > 0 &&
      found.some(({ mainValve }) => mainValve === 'holds') &&
      found.every(
        ({ mainValve, flow }) => mainValve !== 'does-not-hold' && (flow === 'none' || flow === 'unknown'),
      ),
    waterLost: waterLost ?? recordedWater(facts),
  };
}

/** The latest figure that somebody recorded. */
function recordedWater(facts: readonly Effective[]): WaterLost | null {
  const last = ofKind(facts, 'water-lost').at(-1)?.fact;
  return last === undefined
    ? null
    : { gallons: last.body.waterLostGal, basis: last.body.basis, submissionId: last.submissionId };
}

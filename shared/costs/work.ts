import { ofKind, type Effective } from '../submissions/effective.ts';
import type { BodyOf, Fact } from '../submissions/submission.ts';
import { damageClasses, type DamageClass } from '../strikes/damage.ts';
import { mainValveHeld, standingWater } from '../water/standing.ts';
import { counterCalculation } from './counterCalculation.ts';
import { localDate, type LocalDate } from './days.ts';
import { dollarText } from './money.ts';

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

/** What is taken off the bill, and why: salvage, betterment, a joint owner's share. */
export interface Credit {
  readonly submissionId: string;
  readonly title: string;
  /** Whole cents above zero; the line takes them off. */
  readonly amountCents: number;
  /** How the amount was come by, in signs that every language reads. */
  readonly arithmetic: string;
}

/** Everything a statement is computed from, apart from the rates. */
export interface Work {
  readonly timeZone: string;
  /** How far the damage went, by the repairs: flat prices and fees hang on it. */
  readonly damage: readonly DamageClass[];
  /** Hours that a worker had in a week before this job, from the payroll: weekly overtime counts them. */
  readonly weekHours: readonly {
    readonly workerId: string;
    readonly weekStartsOn: LocalDate;
    readonly hours: string;
  }[];
  readonly credits: readonly Credit[];
  /** Time spent on the claim and not on the hydrant: recorded, and off the demand unless an ordinance is named. */
  readonly claimHandling: readonly WorkRecord[];
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
  const struckAt = earliest(strikes.map(({ body }) => body.struckAt));
  const reportedAt = earliest(
    strikes.flatMap(({ body, occurredAt }) => [body.reportedBy.reportedAt, body.arrivedAt, occurredAt]),
  );
  const firstAt = earliest(facts.map(({ fact }) => fact.occurredAt));
  const day = (at: string): LocalDate => localDate(at, timeZone);
  const strike: Work['strike'] =
    struckAt !== null
      ? { date: day(struckAt), basis: 'struck' }
      : reportedAt !== null
        ? { date: day(reportedAt), basis: 'reported' }
        : { date: firstAt === null ? '' : day(firstAt), basis: 'first-record' };
  const ofStrike = facts.filter(({ fact }) => fact.subject.type === 'strike');
  const lastWater = standingWater(facts)?.fact ?? null;
  return {
    timeZone,
    damage: damageOf(facts),
    weekHours: ofKind(facts, 'week-hours').flatMap(({ fact }) => fact.body.weeks),
    credits: creditsOf(facts, strike.date),
    claimHandling: ofKind(facts, 'claim-handling').map(({ fact: { body, submissionId, occurredAt } }) => ({
      submissionId,
      issuedOn: day(occurredAt),
      crew: [{ workerId: body.workerId, laborClass: body.laborClass, work: body.work, breaks: [] }],
      machines: [],
      parts: [],
      contractors: [],
    })),
    strike,
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
    mainValveHeld: mainValveHeld(facts),
    waterLost: waterLost ?? (lastWater && recordedWater(lastWater)),
  };
}

/** Credits that were recorded, and counter-calculations that somebody said apply. */
function creditsOf(facts: readonly Effective[], struckOn: LocalDate): Credit[] {
  return [
    ...ofKind(facts, 'credit').map(({ fact: { body, submissionId } }) => ({
      submissionId,
      title: body.title,
      amountCents: body.amountCents,
      // How it was found, as whoever recorded it says: an insurer may read it.
      arithmetic: `-$${dollarText(body.amountCents)}: ${body.basis}`,
    })),
    ...ofKind(facts, 'counter-calculation').flatMap(({ fact: { body, submissionId } }) => {
      if (body.applied === null) return [];
      const { creditCents, arithmetic } = counterCalculation(body, struckOn);
      return creditCents === 0
        ? []
        : [
            {
              submissionId,
              title: body.component,
              amountCents: creditCents,
              arithmetic: `${arithmetic} → -$${dollarText(creditCents)}`,
            },
          ];
    }),
  ];
}

/** Every extent that a repair records, each once, in the order of the list. */
function damageOf(facts: readonly Effective[]): DamageClass[] {
  const recorded = new Set(ofKind(facts, 'repair').map(({ fact }) => fact.body.damage));
  return damageClasses.filter((damage) => recorded.has(damage));
}

/** The figure that a record claims: the low one of its estimate, or another one that somebody chose with a reason. */
const recordedWater = ({ body, submissionId }: Fact<'water-lost'>): WaterLost => ({
  gallons: body.waterLostGal,
  basis: body.basis,
  submissionId,
});

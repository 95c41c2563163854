import type { AuditCase } from '../../../shared/audit/case.ts';
import { objectionsTo } from '../../../shared/audit/objections.ts';
import type { PayRules } from '../../../shared/costs/book/labor.ts';
import type { RateBookEdition } from '../../../shared/costs/rateBook.ts';
import { statementOfCosts } from '../../../shared/costs/statement.ts';
import { project } from '../../../shared/projections/project.ts';
import { effectiveFacts } from '../../../shared/submissions/effective.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Submission } from '../../../shared/submissions/submission.ts';
import type { WaterLostInput } from '../../../shared/water/input.ts';
import { recordWaterLost } from '../../../shared/water/record.ts';
import { plainRules } from '../../support/payRules.ts';
import { labor, machine, noRates, stock } from '../../support/rates.ts';
import { sampleBodies } from '../../support/sampleBodies.ts';
import { at, fact, onHydrant, onStrike, recorded } from '../../support/submissions.ts';

type Bodies = Partial<{ [K in FactKind]: Partial<BodyOf<K>> | readonly Partial<BodyOf<K>>[] | null }>;
export const sample = <K extends FactKind>(kind: K): BodyOf<K> => sampleBodies[kind];
export const hour = (from: number, to: number) => ({ from: at(from), to: at(to) });

export const photo = (view: 'overall' | 'scale', takenAt: string | null, sha: string) => ({
  sha256: sha.repeat(32),
  bytes: 1000,
  mediaType: 'image/jpeg' as const,
  takenAt,
  view,
  caption: null,
});

export const crew = (workerId: string, laborClass = 'mechanic', work = [hour(60, 180)]) => ({
  workerId,
  laborClass,
  work,
  breaks: [],
});

export const edition: RateBookEdition = {
  ...noRates,
  labor: [labor('mechanic', '40.00')],
  machines: [machine('truck', 'hour', '25.00')],
  stock: [stock('KIT', '400.00')],
  water: { per1000GalUsd: '6.00', authorityId: 'a' },
};

/** A case with nothing to object to: seen, photographed, on paper, priced and within its hours. */
export function caseOf(
  bodies: Bodies = {},
  more: Partial<AuditCase> = {},
  rates: Partial<RateBookEdition> = {},
) {
  const clean: Bodies = {
    strike: {
      struckAt: at(0),
      struckAtBasis: 'witnessed',
      calledOutAt: at(10),
      arrivedAt: at(30),
      waterShutAt: at(40),
      found: {
        ...sample('strike').found!,
        flow: 'none',
        jetHeightIn: null,
        throwDistanceIn: null,
        mainValve: 'holds',
        lowerBarrel: 'sound',
        belowGrade: 'no-sign',
      },
      photos: [photo('overall', at(35), 'a1'), photo('scale', at(36), 'b2')],
    },
    party: { hitAndRun: 'no' },
    repair: {
      damage: 'breakaway-kit',
      crew: [crew('w-1')],
      machines: [
        {
          machineCode: 'truck',
          description: 'Truck',
          operatorWorkerId: 'w-1',
          inUse: [hour(60, 180)],
          standingBy: [],
          drivenMiles: null,
        },
      ],
      parts: [
        { partNumber: 'KIT', description: 'Kit', quantity: 1, source: { from: 'stock', issueSlip: 'S-1' } },
      ],
      contractors: [],
      steps: [],
      photos: [],
      reassembledAt: at(170),
      completedAt: at(180),
      premiumTimeReason: null,
    },
    inspection: { inspectedAt: '2025-09-01T12:00:00Z' },
    'flow-test': { testedAt: '2024-05-01T12:00:00Z', photos: [] },
  };
  const wanted = { ...clean, ...bodies };
  let number = 100;
  const submissions: Submission[] = Object.entries(wanted).flatMap(([kind, value]) => {
    const list = value === null ? [] : Array.isArray(value) ? value : [value];
    const subject =
      kind === 'inspection' || kind === 'flow-test'
        ? onHydrant(sample('strike').hydrantId ?? 'H-1')
        : onStrike(1);
    return list.map(
      (body) =>
        fact(kind as 'strike', (number += 1), subject, body as Partial<BodyOf<'strike'>>) as Submission,
    );
  });
  const records = submissions.map((submission) => recorded(submission));
  const { facts } = effectiveFacts(records);
  const strike = project(records, () => 'dry-barrel').strikes[0]!;
  const editions = [{ ...edition, ...rates }];
  const audited: AuditCase = {
    now: at(60 * 24 * 5),
    timeZone: 'America/Chicago',
    claim: { ...sample('claim-opened'), payerKind: 'drivers-insurer' },
    party:
      wanted.party === null ? null : { ...sample('party'), ...(wanted.party as Partial<BodyOf<'party'>>) },
    strike: { ...strike, breaches: [] },
    facts,
    hydrant: null,
    model: null,
    statement: statementOfCosts({
      facts: facts.filter(({ fact: { subject } }) => subject.type === 'strike'),
      editions,
      timeZone: 'America/Chicago',
    }),
    editions: editions.map((each) => ({ edition: each, recordedAt: '2020-01-01T00:00:00Z' })),
    photos: facts.flatMap(({ fact: { submissionId, body }, recordedAt }) =>
      'photos' in body
        ? body.photos.map((exhibit) => ({
            exhibit,
            submissionId,
            recordedAt,
            arrived: true,
            cameraTime: null,
          }))
        : [],
    ),
    elsewhere: [],
    pastRepairs: [],
    limitation: { lastDay: '2030-01-01', citation: 'Code 1' },
    ...more,
  };
  return audited;
}

export const raised = (audited: AuditCase): string[] => objectionsTo(audited).map(({ rule }) => rule);
export const body = <K extends FactKind>(kind: K, change: Partial<BodyOf<K>>): Bodies => {
  const found = caseOf().facts.find(({ fact: each }) => each.kind === kind)?.fact.body ?? sample(kind);
  return { [kind]: { ...found, ...change } };
};
export const withStatement = (
  change: (statement: AuditCase['statement']) => Partial<AuditCase['statement']>,
): AuditCase => {
  const audited = caseOf();
  return { ...audited, statement: { ...audited.statement, ...change(audited.statement) } };
};
/** No hour is a scheduled one, so that each is paid at one and a half. */
export const premium: PayRules = { ...plainRules, payRulesId: 'p', workingHours: [] };
export const oldHydrant = (installedOn: string | null) =>
  ({ hydrantId: 'H-1', installedOn }) as unknown as NonNullable<AuditCase['hydrant']>;
export const model = { modelId: 'M', kitContents: [{ partNumber: 'OTHER', description: 'x', quantity: 1 }] };
export const repair = () =>
  caseOf().facts.find(({ fact: each }) => each.kind === 'repair')!.fact.body as BodyOf<'repair'>;
export const party = (change: Partial<BodyOf<'party'>>): Bodies =>
  body('party', { ...sample('party'), ...change });
export const nobody = { driver: null, vehicles: [] };

export const flowing = (): Bodies =>
  body('strike', { found: { ...sample('strike').found!, flow: 'full-bore', mainValve: 'does-not-hold' } });
/** A record of before has a figure and a sentence alone. */
export const ofBefore = { question: null, estimate: null, challengeAnswer: null } as const;
/** A jet of 36 in from a 4 in opening for an hour: low 25,800 gal, best 30,100 gal (tests/shared/water). */
export const bestFigure = (): Partial<BodyOf<'water-lost'>> => {
  const question: WaterLostInput = {
    found: { mainValve: 'does-not-hold', flow: 'jet', jetHeightIn: 36, openingDiameterIn: 4 },
    times: { struckAt: at(0), struckAtBasis: 'witnessed', waterShutAt: at(60) },
    choice: { figure: 'best', reason: 'measured twice' },
  };
  return { ...recordWaterLost(question, { system: 'us', locale: 'en' }), question };
};

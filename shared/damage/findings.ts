import type { Hydrant } from '../inventory/hydrant.ts';
import { ofKind, type Effective } from '../submissions/effective.ts';
import {
  findingKeys,
  known,
  type Finding,
  type FindingKey,
  type Findings,
  type FindingSource,
} from './finding.ts';
import { repairFindings } from './repairFindings.ts';

export interface Found {
  readonly findings: Findings;
  /** Findings that another record says otherwise, in pairs: the one that stands, the one that does not. */
  readonly disagree: readonly { readonly stands: Finding; readonly otherwise: Finding }[];
}

/** Damage that was seen stands against a report that did not see it, until that record is corrected. */
const seenDamage: Partial<Record<FindingKey, readonly string[]>> = {
  nozzleSection: ['damaged'],
  lowerBarrel: ['damaged'],
  belowGrade: ['found'],
  main: ['found'],
  barrelStands: ['out-of-place', 'leans'],
  ground: ['water-rising', 'washed-out'],
  stem: ['bent'],
  seat: ['scored'],
  breakawayFlangeParted: ['yes'],
  stemCouplingParted: ['yes'],
};

/** The worse of two is the one named first above; of two that are equally bad the later stands. */
function standing(key: FindingKey, earlier: Finding, later: Finding): Finding {
  const rank = ({ value }: Finding): number => {
    const at = (seenDamage[key] ?? []).indexOf(value);
    return at < 0 ? Infinity : at;
  };
  return rank(earlier) < rank(later) ? earlier : later;
}

const isKnown = (key: FindingKey, value: unknown): boolean =>
  (known[key] as readonly unknown[]).includes(value);

/**
 * Everything that the facts and the inventory say of a struck hydrant's parts, in time order of the facts. A suspicion
 * gives way to a later look; damage that was seen does not give way to a record that did not see it.
 *
 * @param facts effective facts of the strike and those of its hydrant since (`sinceStrike`), in the order in which they
 *   happened
 */
export function readFindings(facts: readonly Effective[], hydrantType: Hydrant['type']): Found {
  const said = new Map<FindingKey, Finding>();
  const disagree: { stands: Finding; otherwise: Finding }[] = [];
  const say = (key: FindingKey, value: unknown, source: FindingSource): void => {
    if (!isKnown(key, value)) return;
    const next = { key, value, source } as Finding;
    const before = said.get(key);
    if (!before) {
      said.set(key, next);
      return;
    }
    const stands = standing(key, before, next);
    said.set(key, stands);
    if (before.value !== next.value) disagree.push({ stands, otherwise: stands === next ? before : next });
  };
  say('type', hydrantType, { kind: 'inventory' });
  for (const item of facts) {
    const source = sourceOf(item);
    for (const [key, value] of saidBy(item)) say(key, value, source);
  }
  return {
    findings: Object.fromEntries(said),
    // Only what is still in force on its one side.
    disagree: disagree.filter(({ stands }) => said.get(stands.key) === stands),
  };
}

const sourceOf = ({ fact }: Effective): FindingSource => ({
  kind: fact.kind,
  submissionId: fact.submissionId,
  at: fact.occurredAt,
  personId: fact.person.personId,
});

/** What one record says; a thing that it calls unknown it does not say. */
function saidBy(item: Effective): readonly (readonly [FindingKey, unknown])[] {
  const strikes = ofKind([item], 'strike').flatMap(({ fact: { body } }) => [
    ...saidOfParts(body.found),
    // A hazard that is not ticked says nothing of the ground.
    ...(body.hazards.includes('undermined-ground') ? [['ground', 'washed-out'] as const] : []),
  ]);
  const valves = ofKind([item], 'valve-operation').flatMap(({ fact: { body } }) =>
    body.action === 'closed' && body.valve === 'isolation'
      ? [['isolationValve', isolation[body.waterShut]] as const]
      : [],
  );
  // Of the faults that any inspection may tick, only the drain says how far the damage goes: a leak, a stiff stem or a
  // worn thread may be older than the strike.
  const inspections = ofKind([item], 'inspection').flatMap(({ fact: { body } }) => [
    ...saidOfParts(body.found),
    ...(body.findings.includes('does-not-drain') ? [['drain', 'blocked'] as const] : []),
  ]);
  const repairs = ofKind([item], 'repair').flatMap(({ fact: { body } }) => repairFindings(body));
  return [...strikes, ...valves, ...inspections, ...repairs];
}

const saidOfParts = (
  found: Readonly<Record<string, unknown>> | null | undefined,
): readonly (readonly [FindingKey, unknown])[] => findingKeys.map((key) => [key, found?.[key]] as const);

const isolation = { yes: 'holds', no: 'does-not-hold', unknown: null } as const;

import type { RateBookEdition } from '../costs/rateBook.ts';
import { statementOf, type Statement } from '../costs/statement.ts';
import type { Work, WorkRecord } from '../costs/work.ts';
import { canonicalJson } from '../submissions/canonical.ts';
import type { PacketBasis } from './basisSchema.ts';

/** Lists of an edition whose entries are left out one by one, in an order in which nothing left hangs on what went. */
const lists = ['labor', 'machines', 'stock', 'flatTariffs', 'jobFees', 'overheads', 'payRules'] as const;
/** Single rules of an edition, with what an edition without them holds. */
const rules = [
  'materialHandling',
  'salesTax',
  'water',
  'flowTest',
  'minimumCharge',
  'totalRounding',
  'claimHandling',
] as const;

/**
 * The work and the rates that a statement follows from, and no more: an edition, an entry or an hour of another week
 * whose absence changes nothing in the statement is left out, so no wage leaves that was not billed. Throws when the
 * statement does not follow from them, which would be a fault of ours.
 */
export function packetBasis(
  work: Work,
  editions: readonly RateBookEdition[],
  statement: Statement,
): PacketBasis {
  const wanted = canonicalJson(statement);
  const gives = (tried: Work, rates: readonly RateBookEdition[]): boolean => {
    try {
      return canonicalJson(statementOf(tried, rates)) === wanted;
    } catch {
      return false;
    }
  };
  let kept = without(editions, (left) => gives(work, left));
  kept = kept.map((edition) => mentioned(edition, work));
  kept.forEach((_, index) => {
    const inPlace = (edition: RateBookEdition): RateBookEdition[] =>
      kept.map((other, at) => (at === index ? edition : other));
    const holds = (edition: RateBookEdition): boolean => whole(edition) && gives(work, inPlace(edition));
    const [edition] = [kept[index]];
    if (edition) kept = inPlace(withoutUnread(pruned(edition, holds)));
  });

  const told = toldOf(work);
  const weekHours = without(told.weekHours, (left) => gives({ ...told, weekHours: left }, kept));
  const claimHandling = without(told.claimHandling, (left) =>
    gives({ ...told, weekHours, claimHandling: left }, kept),
  );
  const basis: Work = { ...told, weekHours, claimHandling };
  if (!gives(basis, kept)) throw new Error('a statement does not follow from its packet’s basis');
  return structuredClone({ work: basis, editions: kept }) as PacketBasis;
}

/** The list without those items that nothing hangs on, asked one after another. */
function without<T>(items: readonly T[], holds: (left: readonly T[]) => boolean): T[] {
  let kept = [...items];
  for (const item of items) {
    const left = kept.filter((other) => other !== item);
    if (holds(left)) kept = left;
  }
  return kept;
}

/**
 * First by name, because an edition may hold thousands: entries whose code the work does not mention. Accounts are the
 * utility's own books and in no statement.
 */
function mentioned({ accounts: _own, ...edition }: RateBookEdition, work: Work): RateBookEdition {
  const all = [...work.records, ...work.claimHandling];
  const of = (codes: (record: WorkRecord) => readonly string[]): Set<string> => new Set(all.flatMap(codes));
  const classes = of(({ crew }) => crew.map(({ laborClass }) => laborClass));
  const machines = of((record) => record.machines.map(({ machineCode }) => machineCode));
  const parts = of((record) => record.parts.map(({ partNumber }) => partNumber));
  return {
    ...edition,
    labor: edition.labor.filter(({ laborClass }) => classes.has(laborClass)),
    machines: edition.machines.filter(({ machineCode }) => machines.has(machineCode)),
    stock: edition.stock.filter(({ partNumber }) => parts.has(partNumber)),
  };
}

/** Nothing left names what is gone. */
function whole({ labor, payRules = [], overheads = [] }: RateBookEdition): boolean {
  const rulesLeft = new Set(payRules.map(({ payRulesId }) => payRulesId));
  const before = new Set<string>();
  return (
    labor.every(({ payRulesId }) => payRulesId === undefined || rulesLeft.has(payRulesId)) &&
    overheads.every(({ overheadId, onOverheads }) => {
      before.add(overheadId);
      return onOverheads.every((other) => before.has(other));
    })
  );
}

function pruned(edition: RateBookEdition, holds: (edition: RateBookEdition) => boolean): RateBookEdition {
  let kept = edition;
  for (const list of lists) {
    // Last first: an overhead stands on those listed before it.
    for (const entry of [...(kept[list] ?? [])].reverse()) {
      const left = { ...kept, [list]: (kept[list] as unknown[]).filter((other) => other !== entry) };
      if (holds(left)) kept = left;
    }
  }
  for (const rule of rules)
    if (kept[rule]) {
      const left = { ...kept, [rule]: null };
      if (holds(left)) kept = left;
    }
  return kept;
}

/** Authorities that an entry still names; the form asks for one at least. */
function withoutUnread(edition: RateBookEdition): RateBookEdition {
  const { authorities, ...rest } = edition;
  const named = JSON.stringify(rest);
  const read = authorities.filter(({ authorityId }) =>
    named.includes(`"authorityId":${JSON.stringify(authorityId)}`),
  );
  return { ...edition, authorities: read.length > 0 ? read : authorities.slice(0, 1) };
}

type Source = WorkRecord['parts'][number]['source'];

/** Which shelf a part lay on is the utility's own housekeeping. */
function withoutShelf(source: Source): Source {
  if (source.from !== 'stock') return source;
  const { location: _location, ...told } = source;
  return told;
}

/** The work without what no figure hangs on: why a part was an upgrade is the desk's own note. */
function toldOf(work: Work): Work {
  return {
    ...work,
    records: work.records.map((record) => ({
      ...record,
      parts: record.parts.map(({ upgradeReason: _reason, ...part }) => ({
        ...part,
        source: withoutShelf(part.source),
      })),
    })),
  };
}

import { formatCents } from '../costs/money.ts';
import { sayHydrant, type PacketReader } from '../packet/reader.ts';
import type { PacketContent } from '../packet/schema.ts';
import type { MergeValues } from './fields.ts';

/** What a packet says, but for its letter. */
export type LetterFacts = Omit<PacketContent, 'letter'>;

const joined = (parts: readonly (string | null | undefined)[], by = ', '): string | null => {
  const said = parts.filter((part) => part !== null && part !== undefined && part !== '');
  return said.length === 0 ? null : said.join(by);
};

/** The claim's own vehicles as a letter names them. */
export function sayVehicles({ party }: Pick<LetterFacts, 'party'>, { say }: PacketReader): string | null {
  return joined(
    (party?.vehicles ?? []).map(({ kind, plate, plateRegion, description }) =>
      joined([
        kind === 'unknown' ? null : say(`value.vehicle.${kind}`),
        joined([plate, plateRegion], ' '),
        description,
      ]),
    ),
    '; ',
  );
}

export function sayCrashReport({ party }: Pick<LetterFacts, 'party'>): string | null {
  const { codeSystem, code, text } = party?.crashReport ?? {};
  return joined([joined([codeSystem, code], ': '), text]);
}

/**
 * The value of every merge field, from what has passed the packet's allow-list: a letter cannot name what a packet may
 * not.
 */
export function letterValues(facts: LetterFacts, reader: PacketReader): MergeValues {
  const { claim, hydrant, issue, party, statement, strike, utility } = facts;
  const { say } = reader;
  const sums = statement.sections.map(
    ({ section, subtotalCents }) => `${say(`packet.section.${section}`)}: ${formatCents(subtotalCents)}`,
  );
  const total = formatCents(statement.totalCents);
  return {
    claimNumber: claim.claimNumber,
    date: reader.date(issue.asOf),
    utility: utility.name,
    utilityPhone: utility.phone,
    utilityEmail: utility.email,
    payer: claim.payer.name,
    payerAttention: claim.payer.attention,
    payerReference: claim.payer.reference,
    policy: claim.payerKind === 'own-policy' ? claim.payer.reference : (party?.policyNumber ?? null),
    hydrant: sayHydrant(facts, reader),
    place: hydrant.place,
    struckAt:
      strike.struckAt === null
        ? say('letter.struck-unknown', { since: reader.dateTime(strike.since) })
        : reader.dateTime(strike.struckAt),
    returnedAt: strike.returnedAt === null ? null : reader.dateTime(strike.returnedAt),
    driverLeft: party?.hitAndRun === 'yes' ? say('letter.driver-left') : null,
    policeReport: party?.police.reportNumber ?? null,
    policeAgency: party?.police.agency ?? null,
    crashReport: sayCrashReport(facts),
    vehicle: sayVehicles(facts, reader),
    total,
    demand: formatCents(claim.demandCents),
    otherDemands: claim.otherDemandsCents > 0 ? formatCents(claim.otherDemandsCents) : null,
    itemizedLoss: [...sums, say('letter.loss-total', { total })].join('\n'),
    remitTo: utility.remitTo.join('\n'),
    signedBy: joined([utility.signedBy?.name, utility.signedBy?.trade]),
    deductible: claim.deductibleCents === null ? null : formatCents(claim.deductibleCents),
    lessDeductible:
      claim.deductibleCents === null
        ? null
        : formatCents(Math.max(0, claim.demandCents - claim.deductibleCents)),
    howToCheck: utility.checkUrl === null ? null : say('packet.check.letter', { address: utility.checkUrl }),
    revision: issue.state === 'frozen' ? String(issue.revision) : null,
    changes: ('changes' in issue && typeof issue.changes === 'string' && issue.changes) || null,
  };
}

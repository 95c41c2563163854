import { rule, when, type AuditCase, type Rule } from '../case.ts';
import { bodies, linesOfPart, ofSection, repairsThat, sumCents, yearsBetween } from '../reading.ts';

/** An age at which a reader asks for depreciation, years (common practice, no source). */
const OLD_YEARS = 40;

/** What a part is billed at, and the first of its lines to look at. */
function billedAs(audited: AuditCase, partNumber: string): { atStakeCents: number; lineId?: string } {
  const lines = linesOfPart(audited, partNumber);
  const [first] = lines;
  return { atStakeCents: sumCents(lines), ...(first ? { lineId: first.lineId } : {}) };
}

const withPart = (audited: AuditCase, partNumber: string): string[] =>
  repairsThat(audited, ({ parts }) => parts.some((part) => part.partNumber === partNumber));

/** Parts, what they replace, and what an adjuster takes off for age. */
export const materialRules: readonly Rule[] = [
  rule('part-without-paper', 'documents', (audited) => {
    const { facts } = audited;
    const papers = bodies(facts, 'documents').flatMap((body) => body.documents);
    const held = (number: string): boolean => papers.some((paper) => paper.number === number);
    return bodies(facts, 'repair').flatMap(({ parts }) =>
      parts.flatMap(({ partNumber, description, source }) => {
        const bare =
          source.from === 'stock'
            ? source.issueSlip === null || source.issueSlip === ''
            : source.invoiceSha256 === null && !held(source.invoiceNumber);
        return when(bare, () => ({
          about: partNumber,
          ...billedAs(audited, partNumber),
          params: { partNumber, description, from: source.from },
        }));
      }),
    );
  }),
  rule('contractor-without-invoice', 'documents', ({ facts, statement }) => {
    const papers = bodies(facts, 'documents').flatMap((body) => body.documents);
    return bodies(facts, 'repair').flatMap(({ contractors }) =>
      contractors.flatMap(({ contractor, invoiceNumber, invoiceSha256, amountCents }) =>
        when(invoiceSha256 === null && !papers.some(({ number }) => number === invoiceNumber), () => ({
          about: `${contractor}:${invoiceNumber}`,
          // As billed: under a flat price nothing is.
          atStakeCents: statement.lines.some(
            ({ section, item, authority }) =>
              section === 'contractors' && item === contractor && authority?.edition === invoiceNumber,
          )
            ? amountCents
            : 0,
          params: { contractor, invoiceNumber },
        })),
      ),
    );
  }),
  rule('part-not-of-model', 'repair', (audited) => {
    const { facts, model } = audited;
    if (model === null || model.kitContents.length === 0) return [];
    const kit = new Set(model.kitContents.map(({ partNumber }) => partNumber));
    return bodies(facts, 'repair').flatMap(({ parts, damage }) =>
      // More than a breakaway repair takes parts that are in no kit.
      damage !== 'breakaway-kit'
        ? []
        : parts.flatMap(({ partNumber, description }) =>
            when(!kit.has(partNumber), () => ({
              about: partNumber,
              of: withPart(audited, partNumber),
              ...billedAs(audited, partNumber),
              params: { partNumber, description, model: model.modelId },
            })),
          ),
    );
  }),
  rule('extent-without-finding', 'strike', ({ facts, statement }) => {
    const found = bodies(facts, 'strike').flatMap((body) => body.found ?? []);
    const dug = bodies(facts, 'repair').some(
      ({ damage }) => damage === 'replace-whole' || damage === 'lower-barrel' || damage === 'below-grade',
    );
    return when(
      dug &&
        !found.some(
          ({ lowerBarrel, belowGrade, mainValve }) =>
            lowerBarrel === 'damaged' ||
            belowGrade === 'found' ||
            belowGrade === 'suspected' ||
            mainValve === 'does-not-hold',
        ),
      () => ({ atStakeCents: statement.totalCents }),
    );
  }),
  rule('upgrade-without-reason', 'repair', (audited) =>
    bodies(audited.facts, 'repair').flatMap(({ parts }) =>
      parts.flatMap((part) =>
        when(part.upgrade === true && (part.upgradeReason ?? '').trim() === '', () => ({
          about: part.partNumber,
          of: withPart(audited, part.partNumber),
          ...billedAs(audited, part.partNumber),
          params: { partNumber: part.partNumber, description: part.description },
        })),
      ),
    ),
  ),
  rule('old-without-counter-calculation', 'counter-calculation', ({ hydrant, strike, facts, statement }) => {
    const installedOn = hydrant?.installedOn ?? null;
    const years = installedOn === null ? 0 : yearsBetween(installedOn, strike.since);
    return when(years >= OLD_YEARS && bodies(facts, 'counter-calculation').length === 0, () => ({
      atStakeCents: sumCents(statement.lines.filter(({ section }) => section === 'materials')),
      params: { years },
    }));
  }),
  rule('install-date-unknown', null, (audited) =>
    when(
      audited.hydrant !== null &&
        audited.hydrant.installedOn === null &&
        ofSection(audited, 'materials').length > 0 &&
        bodies(audited.facts, 'counter-calculation').length === 0,
      () => ({ atStakeCents: sumCents(ofSection(audited, 'materials')) }),
    ),
  ),
];

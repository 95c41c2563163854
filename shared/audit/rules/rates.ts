import { footingProblems } from '../../costs/footing.ts';
import type { StatementLine } from '../../costs/line.ts';
import { rule, when, type Rule } from '../case.ts';
import { ofSection, sumCents } from '../reading.ts';

/** `Crew lead (w-101)`; the item alone where nothing describes it. */
const named = ({ description, item }: StatementLine): string =>
  description === '' || description === item ? item : `${description} (${item})`;

/** Rates, shares and sums. */
export const rateRules: readonly Rule[] = [
  rule('overhead-without-authority', 'rate-book', (audited) =>
    [...ofSection(audited, 'overhead'), ...audited.statement.lines.filter(({ kind }) => kind === 'handling')]
      // 18 CFR 101: an arbitrary percentage is not permitted. A paper of no kind, without a page, is close to one.
      .flatMap(({ lineId, kind, description, authority, amountCents }) =>
        when(authority === null || authority.kind === 'other' || authority.page === null, () => ({
          about: lineId,
          lineId,
          atStakeCents: amountCents ?? 0,
          params: { kind: kind === 'handling' ? 'handling' : 'overhead', share: description },
        })),
      ),
  ),
  rule('share-on-schedule-rate', 'rate-book', ({ statement, editions }) => {
    // A published equipment schedule's rate holds overhead; a share on machines lays it on twice.
    const fromSchedule = statement.lines.filter(
      ({ section, authority, editionId, item }) =>
        section === 'machines' &&
        authority?.kind === 'schedule' &&
        !editions
          .find(({ edition }) => edition.editionId === editionId)
          ?.edition.machines.find(({ machineCode }) => machineCode === item)
          ?.includes?.includes('overhead'),
    );
    const shares = editions.flatMap(({ edition }) =>
      statement.lines.some(
        ({ section, editionId }) => section === 'overhead' && editionId === edition.editionId,
      )
        ? (edition.overheads ?? []).filter(({ on }) => on.includes('machines'))
        : [],
    );
    return shares.flatMap((share) =>
      when(fromSchedule.length > 0, () => ({
        about: share.overheadId,
        atStakeCents: Math.round(sumCents(fromSchedule) * Number(share.fraction)),
        params: { share: share.title, machines: fromSchedule.map(({ item }) => item).join(', ') },
      })),
    );
  }),
  rule('edition-not-in-force', 'rate-book', ({ statement }) =>
    statement.problems
      .filter(({ code }) => code === 'no-rate-edition' || code === 'two-rate-editions')
      .map(({ path, params }) => ({
        about: path,
        atStakeCents: 0,
        params: { date: String(params['date'] ?? '') },
      })),
  ),
  rule('edition-recorded-after-strike', 'rate-book', ({ statement, editions, strike }) =>
    editions.flatMap(({ edition, recordedAt }) => {
      const lines = statement.lines.filter(({ editionId }) => editionId === edition.editionId);
      return when(lines.length > 0 && recordedAt > strike.since, () => ({
        about: edition.editionId,
        // When it was typed in is no fault of the rates: a paper that shows its date answers this, and no money hangs on it.
        atStakeCents: 0,
        params: { edition: edition.title, recordedAt },
      }));
    }),
  ),
  rule('line-without-amount', 'rate-book', ({ statement }) =>
    when(!statement.complete, () => ({
      atStakeCents: 0,
      params: { lines: statement.lines.filter(({ amountCents }) => amountCents === null).length },
    })),
  ),
  rule('duplicate-line', 'repair', ({ statement }) => {
    const seen = new Map<string, string>();
    return statement.lines.flatMap((line) => {
      const key = [line.kind, line.item, line.amountCents, line.quantity, JSON.stringify(line.days)].join(
        '|',
      );
      const first = seen.get(key);
      seen.set(key, line.lineId);
      // Two people of one class on one shift are two lines; only what bears one name twice is a duplicate.
      return when(first !== undefined && line.item !== '' && (line.amountCents ?? 0) > 0, () => ({
        about: line.lineId,
        lineId: line.lineId,
        atStakeCents: line.amountCents ?? 0,
        params: { item: named(line), first: first ?? '', second: line.lineId },
      }));
    });
  }),
  rule('bill-does-not-foot', null, ({ statement }) =>
    when(footingProblems(statement).length > 0, () => ({ atStakeCents: statement.totalCents })),
  ),
  rule('flat-price-above-cost', 'rate-book', (audited) => {
    const priceCents = sumCents(ofSection(audited, 'flat-price'));
    const costCents = audited.statement.notes
      .filter(({ code }) => code === 'covered-by-flat-price')
      .reduce((sum, { params }) => sum + Number(params['amountCents'] ?? 0), 0);
    return when(priceCents > 0 && costCents < priceCents, () => ({
      atStakeCents: priceCents - costCents,
      params: { priceCents, costCents },
    }));
  }),
  rule('flat-prices-together', 'repair', (audited) => {
    // Two repairs of different extent: what was first thought to be enough, and what it took.
    const lines = ofSection(audited, 'flat-price');
    const [largest = 0] = lines.map(({ amountCents }) => amountCents ?? 0).sort((a, b) => b - a);
    return when(lines.length > 1, () => ({
      atStakeCents: sumCents(lines) - largest,
      params: { lines: lines.length },
    }));
  }),
  rule('minimum-charge-billed', 'rate-book', ({ statement }) =>
    statement.lines.flatMap(({ kind, lineId, amountCents }) =>
      when(kind === 'minimum-charge', () => ({ about: lineId, lineId, atStakeCents: amountCents ?? 0 })),
    ),
  ),
  rule('claim-handling-billed', 'rate-book', (audited) => {
    const lines = ofSection(audited, 'claim-handling');
    return when(lines.length > 0, () => ({ atStakeCents: sumCents(lines) }));
  }),
];

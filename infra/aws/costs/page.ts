import { billOf, lines, publishingCostOf, totalOf, unitsOf, type LineName, type Question } from './bill.ts';
import type { Measurements } from './measured.ts';
import { priceRegion, prices, pricesReadOn, type PriceName } from './prices.ts';
import { publishingAt } from './publishing.ts';
import { reckonedUtilities, type ReckonedUtility } from './utilities.ts';

/** After how long at work a bill is shown: what is kept grows, and so do the pages that are published. */
const shownYears = [1, 7] as const;

type Asked = Omit<Question, 'utility' | 'years'>;

const words: Readonly<Record<LineName, string>> = {
  tables: 'Tables (DynamoDB)',
  objects: 'Photos, packets, pages (S3)',
  functions: 'Functions (Lambda)',
  gateway: 'API',
  edge: 'Public pages (CloudFront)',
  watching: 'Alarms and logs (CloudWatch)',
  signing: 'Signing key (KMS)',
  people: 'Sign-in (Cognito)',
  messages: 'Mails and texts (SES, SNS)',
  events: 'Events (EventBridge)',
};

/** Whole dollars where there are some, so that no more is promised than is known. */
export const dollars = (usd: number): string => {
  if (!(usd >= 0)) throw new Error(`a bill cannot be ${String(usd)}`);
  if (usd < 0.05) return '—';
  return usd < 10 ? usd.toFixed(usd < 1 ? 1 : 0) : String(Number(usd.toPrecision(2)));
};
const roughly = new Intl.NumberFormat('en-US', { maximumSignificantDigits: 2 });
const whole = new Intl.NumberFormat('en-US', { maximumFractionDigits: 0 });
const count = (amount: number): string => roughly.format(amount);

const columns = reckonedUtilities.flatMap((utility) =>
  shownYears.map((years) => ({ utility, years, head: `${utility.name}, year ${years}` })),
);
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [head, head.map((_, index) => (index === 0 ? '---' : '--:')), ...rows]
    .map((cells) => `| ${cells.join(' | ')} |`)
    .join('\n');

/** What a month costs, US dollars: a line a service, a column a utility and an age. */
export function billTable(asked: Asked): string {
  const bills = columns.map(({ utility, years }) => billOf({ ...asked, utility, years }));
  const rows = (Object.keys(lines) as LineName[]).map((what) => [
    words[what],
    ...bills.map((bill) => dollars(bill.find((line) => line.what === what)?.usd ?? Number.NaN)),
  ]);
  return table(
    ['US dollars a month', ...columns.map(({ head }) => head)],
    [...rows, ['**Together**', ...bills.map((bill) => `**${dollars(totalOf(bill))}**`)]],
  );
}

/** The amounts that the largest lines come from. */
export function unitTable(asked: Asked): string {
  const shown: readonly (readonly [string, readonly PriceName[]])[] = [
    ['read units', ['tableReadUnit']],
    ['write units', ['tableWriteUnit']],
    ['objects written or listed', ['objectPut']],
    ['GB kept in S3', ['objectGb']],
    ['GB-seconds of functions', ['functionArmGbSecond', 'functionX86GbSecond']],
    ['requests at the edge', ['edgeRequest']],
    ['GB from the edge', ['edgeGb']],
  ];
  const units = columns.map(({ utility, years }) => unitsOf({ ...asked, utility, years }));
  return table(
    ['a month', ...columns.map(({ head }) => head)],
    shown.map(([name, of]) => [
      name,
      ...units.map((used) => count(of.reduce((sum, each) => sum + used[each], 0))),
    ]),
  );
}

/** What one publication costs and what of the month's bill that is: it is made day and night. */
export function publishingTable({ measured, schedule, standing }: Asked): string {
  const ones = columns.map(({ utility, years }) => publishingAt(measured, schedule, utility, years));
  const share = columns.map(({ utility, years }) =>
    publishingCostOf({ measured, schedule, standing, utility, years }),
  );
  return table(
    ['one publication, nothing new', ...columns.map(({ head }) => head)],
    [
      ['files written', ...ones.map(({ puts }) => count(puts))],
      ['MB written', ...ones.map(({ putBytes }) => count(putBytes / 1e6))],
      ['read units', ...ones.map(({ readUnits }) => count(readUnits))],
      ['processor, ms', ...ones.map(({ cpuMs }) => count(cpuMs))],
      ['all of them, US dollars a month', ...share.map(dollars)],
    ],
  );
}

const settings = [
  { publishEveryMinutes: 5, relyForMinutes: 20 },
  { publishEveryMinutes: 5, relyForMinutes: 60 },
  { publishEveryMinutes: 10, relyForMinutes: 60 },
  { publishEveryMinutes: 15, relyForMinutes: 60 },
] as const;

/** The whole bill with other times of publishing. */
export function turnedDownTable(asked: Asked): string {
  return table(
    ['made every / relied on for, minutes', ...columns.map(({ head }) => head)],
    settings.map((setting) => [
      `${setting.publishEveryMinutes} / ${setting.relyForMinutes}`,
      ...columns.map(({ utility, years }) =>
        dollars(totalOf(billOf({ ...asked, schedule: { ...asked.schedule, ...setting }, utility, years }))),
      ),
    ]),
  );
}

/** The utilities that are reckoned for, in a sentence each. */
export const utilityTable = (): string =>
  table(
    ['', 'hydrants', 'strikes a year', 'people who sign in', 'page views a month', 'wall screens'],
    reckonedUtilities.map((utility: ReckonedUtility) => [
      utility.name,
      ...[utility.hydrants, utility.strikesAYear, utility.people, utility.pageViews, utility.wallScreens].map(
        (value) => whole.format(value),
      ),
    ]),
  );

/** One strike's life, in the units in which it is billed, by the function that does it. */
export function lifeTable({ life }: Measurements): string {
  return table(
    ['function', 'calls', 'processor, ms', 'write units', 'read units', 'PUT and LIST', 'GET'],
    Object.entries(life).map(([name, of]) => [
      name,
      ...[of.calls, of.cpuMs, of.writeUnits, of.readUnits, of.puts + of.lists, of.gets].map((value) =>
        whole.format(value),
      ),
    ]),
  );
}

export const priceTable = (): string =>
  `Read on ${pricesReadOn}, ${priceRegion}.\n\n${table(
    ['price', 'US dollars', 'read in'],
    Object.values(prices).map(({ usd, per, source }) => [per, plainNumber(usd), source]),
  )}`;

/** 0.000000625, and not 6.25e-7. */
const plainNumber = (value: number): string =>
  value >= 0.001 ? String(value) : `${Number((value * 1e6).toPrecision(6))} per million`;

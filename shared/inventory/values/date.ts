/** Which part of `04/05/2021` is the month. */
export type DateOrder = 'mdy' | 'dmy';

export type DateReading =
  /** `yearOnly` stands on 1 January; `century` was filled in for a year of two digits. */
  | { readonly date: string; readonly yearOnly: boolean; readonly century: boolean }
  /** 1970-01-01 and its like: what a program writes for "no date". */
  | { readonly fault: 'placeholder' }
  | { readonly fault: 'impossible' }
  | { readonly fault: 'future'; readonly date: string }
  /** The order of day and month is not known. */
  | { readonly fault: 'ambiguous' }
  | { readonly fault: 'not-a-date' };

/** The zero days of Unix, of spreadsheets and of databases, and the far end that some write for "never". */
const placeholders = new Set([
  '1970-01-01',
  '1969-12-31',
  '1900-01-01',
  '1900-01-00',
  '1899-12-30',
  '1899-12-31',
  '1753-01-01',
  '0001-01-01',
  '9999-12-31',
  '1904-01-01',
]);

/** The first post hydrants with a valve date from the early 1800s (trade history; no asset in use is older). */
const firstYear = 1801;

const iso = /^(\d{4})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?(?:[T ].*)?$/;
const parted = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})(?:[ T,].*)?$/;
const named =
  /^(?:(\d{1,2})[- ]([a-z]{3})[a-z]*\.?[- ,]+(\d{4}|\d{2})|([a-z]{3})[a-z]*\.?[- ](\d{1,2}),?[- ](\d{4}))(?: .*)?$/i;
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];
const meses = ['ene', 'feb', 'mar', 'abr', 'may', 'jun', 'jul', 'ago', 'sep', 'oct', 'nov', 'dic'];

/** Which order a date such as `4/23/2013` shows by itself; null when it could be either or is no such date. */
export function orderShown(text: string): DateOrder | null {
  const match = parted.exec(text.trim());
  if (!match) return null;
  const [first, second] = [Number(match[1]), Number(match[2])];
  return first > 12 && second <= 12 ? 'dmy' : second > 12 && first <= 12 ? 'mdy' : null;
}

/** True when the text has the shape of a date, whatever its sense. */
export const looksLikeDate = (text: string): boolean => {
  const plain = text.trim();
  return (
    iso.test(plain) ||
    parted.test(plain) ||
    named.test(plain) ||
    /^(1[89]|20)\d{2}(\.0)?$/.test(plain) ||
    /^-?\d{11,14}$/.test(plain) ||
    /^(19|20)\d{6}$/.test(plain)
  );
};

/**
 * A calendar day as inventories write it: ISO, `2013/04/23`, `4/23/2013 12:00:00 AM`, `23-Apr-98`, a bare year, eight
 * digits, milliseconds since 1970. The day is taken as written, with no time zone.
 *
 * @param order what `04/05/2021` means in this column, or null when nothing in it shows which
 * @param today ISO date; later ones are answered as `future`
 */
export function readDate(text: string, order: DateOrder | null, today: string): DateReading {
  const plain = text.trim();
  const year = /^(\d{4})(?:\.0)?$/.exec(plain);
  if (year) return settled(year[1], '1', '1', today, { yearOnly: true });
  const isoMatch = iso.exec(plain);
  if (isoMatch) return settled(isoMatch[1], isoMatch[2], isoMatch[3] ?? '1', today);
  const eight = /^(\d{4})(\d{2})(\d{2})$/.exec(plain);
  if (eight) return settled(eight[1], eight[2], eight[3], today);
  if (/^-?\d{11,14}$/.test(plain) || plain === '0')
    return settledDay(new Date(Number(plain)).toISOString().slice(0, 10), today);
  const parts = parted.exec(plain);
  if (parts) {
    const known = orderShown(plain) ?? order;
    const [one = '', two = '', rawYear = ''] = parts.slice(1);
    if (Number(one) > 12 && Number(two) > 12) return { fault: 'impossible' };
    if (known === null && one !== two) return { fault: 'ambiguous' };
    const [day, month] = known === 'dmy' ? [one, two] : [two, one];
    // The column's order and the value disagree: neither reading can be trusted.
    if (order !== null && orderShown(plain) !== null && orderShown(plain) !== order)
      return { fault: 'impossible' };
    return settled(fullYear(rawYear, today), month, day, today, { century: rawYear.length === 2 });
  }
  const words = named.exec(plain);
  if (words) {
    const name = (words[2] ?? words[4] ?? '').toLowerCase();
    const month = Math.max(months.indexOf(name), meses.indexOf(name)) + 1;
    const rawYear = words[3] ?? words[6] ?? '';
    if (month > 0)
      return settled(fullYear(rawYear, today), String(month), words[1] ?? words[5], today, {
        century: rawYear.length === 2,
      });
  }
  return { fault: 'not-a-date' };
}

/** A year of two digits is the latest such year that is not in the future: in 2026, `13` is 2013 and `71` is 1971. */
function fullYear(digits: string, today: string): string {
  if (digits.length !== 2) return digits;
  const thisYear = Number(today.slice(0, 4));
  const year = thisYear - (thisYear % 100) + Number(digits);
  return String(year > thisYear ? year - 100 : year);
}

function settled(
  year = '',
  month = '',
  day = '',
  today: string,
  marks: { yearOnly?: boolean; century?: boolean } = {},
): DateReading {
  const date = `${year.padStart(4, '0')}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
  const reading = settledDay(date, today, marks);
  // A bare 1970 or 1900 is a year like any other.
  return marks.yearOnly && 'fault' in reading && reading.fault === 'placeholder'
    ? { date, yearOnly: true, century: false }
    : reading;
}

function settledDay(
  date: string,
  today: string,
  marks: { yearOnly?: boolean; century?: boolean } = {},
): DateReading {
  if (placeholders.has(date)) return { fault: 'placeholder' };
  const parsed = new Date(`${date}T00:00:00Z`);
  if (Number.isNaN(parsed.getTime()) || parsed.toISOString().slice(0, 10) !== date)
    return { fault: 'impossible' };
  const year = Number(date.slice(0, 4));
  // Plans reach a few decades ahead; beyond that a digit is wrong.
  if (year < firstYear || year > Number(today.slice(0, 4)) + 30) return { fault: 'impossible' };
  if (date > today) return { fault: 'future', date };
  return { date, yearOnly: marks.yearOnly ?? false, century: marks.century ?? false };
}

/** Lines that one sheet of letter paper holds with two hydrants to fall back on in each. */
export const SHEET_ROOMY = 6;
/** Lines that it holds in small type. */
export const SHEET_DENSE = 12;
/** Further numbers and names that it has room for; beyond them their count stands on it, and the page has all. */
export const SHEET_NAMES = 40;

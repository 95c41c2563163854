const escapes: Record<string, string> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it may stand in XML, between tags or in a quoted attribute (XML 1.0, section 2.4). */
export const escapeMarkup = (text: string): string =>
  text.replace(/[&<>"']/g, (sign) => escapes[sign] ?? sign);

/** A coordinate of a drawing: two decimals are finer than any screen, and keep a file small and the same everywhere. */
export const coordinate = (value: number): string => String(Number(value.toFixed(2)));

/** One element of XML 1.0, written; what is inside others is put there as it is. */
export type Xml = { readonly xml: string };

/** Signs that XML 1.0 §2.2 has no way to write, escaped or not. */
const unwritable =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  // Kept as they are, an attribute's would be read as spaces and a carriage return as a line feed.
  '\t': '&#9;',
  '\r': '&#13;',
};

const escapeXml = (text: string): string =>
  text.replace(unwritable, '\ufffd').replace(/[&<>"\t\r]/g, (sign) => entities[sign] ?? sign);

type Attributes = Readonly<Record<string, string | undefined>>;

/** `<name attribute="…">…</name>`. Text is escaped, elements stand as they are, null and undefined are left out. */
export function element(
  name: string,
  attributes: Attributes,
  ...children: readonly (string | Xml | null | undefined)[]
): Xml {
  const written = Object.entries(attributes).flatMap(([key, value]) =>
    value === undefined ? [] : [` ${key}="${escapeXml(value).replaceAll('\n', '&#10;')}"`],
  );
  const inside = children.flatMap((child) =>
    child === null || child === undefined ? [] : [typeof child === 'string' ? escapeXml(child) : child.xml],
  );
  const open = `<${name}${written.join('')}`;
  return { xml: inside.length === 0 ? `${open}/>` : `${open}>${inside.join('')}</${name}>` };
}

/** `<name>text</name>`; nothing for null. */
export const textElement = (name: string, text: string | null): Xml | null =>
  text === null ? null : element(name, {}, text);

/** A whole document. */
export const xmlDocument = ({ xml }: Xml): string => `<?xml version="1.0" encoding="UTF-8"?>\n${xml}\n`;

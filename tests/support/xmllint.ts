import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { validateXML } from 'xmllint-wasm';

const schemas = join(import.meta.dirname, '..', 'reference', 'schemas');

/** What libxml2 finds wrong with a document by one of the schemas in tests/reference/schemas; nothing when it is valid. */
export async function xmlFaults(xml: string, schema: 'cap-1.2.xsd' | 'atom.rng'): Promise<string[]> {
  const result = await validateXML({
    xml,
    schema: readFileSync(join(schemas, schema), 'utf8'),
    extension: schema.endsWith('.rng') ? 'relaxng' : 'schema',
  });
  return result.valid ? [] : result.errors.map(({ message }) => message);
}

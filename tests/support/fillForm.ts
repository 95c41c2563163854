import type { Page } from 'playwright-core';
import { decode } from '../../site/src/app/form/decode.ts';
import { isBlank } from '../../site/src/app/form/encode.ts';
import {
  entries,
  isTypedQuantity,
  rowsOf,
  stringsOf,
  textOf,
  type Leaf,
  type List,
  type Node,
  type Values,
} from '../../site/src/app/form/nodes.ts';
import { specOf } from '../../site/src/app/form/specs/index.ts';
import type { FactKind } from '../../shared/submissions/kinds.ts';
import { utilityZone } from './app.ts';

const fieldAt = (page: Page, path: string) => page.locator(`[id="f-${path.replaceAll('.', '-')}"]`);

/** Types and chooses in the open form of a kind what gives this body, field by field as they are asked. */
export async function fillForm(page: Page, kind: FactKind, body: object): Promise<void> {
  const spec = specOf(kind);
  if (!spec) throw new Error(`nobody fills in a form of kind ${kind}`);
  const folded = page.locator('details.form-section:not([open]) > summary');
  while ((await folded.count()) > 0) await folded.first().click();
  const values = {
    ...decode(spec.nodes, body, utilityZone),
    ...spec.steering?.(body as Record<string, unknown>),
  };
  await fillLevel(page, spec.nodes, values, '');
}

async function fillLevel(page: Page, nodes: readonly Node[], values: Values, base: string): Promise<void> {
  for (const entry of entries(nodes, values)) {
    if (entry.name.startsWith('_')) continue;
    if (entry.type === 'list') await fillRows(page, entry, values, base + entry.name);
    else if (!isBlank(entry, values[entry.name])) await fillLeaf(page, entry, values, base + entry.name);
  }
}

async function fillRows(page: Page, list: List, values: Values, path: string): Promise<void> {
  const field = fieldAt(page, path);
  for (const [index, row] of rowsOf(values[list.name]).entries()) {
    if ((await fieldAt(page, `${path}.${index}`).count()) === 0)
      await field.locator(':scope > button').click();
    await fillLevel(page, list.item, row, `${path}.${index}.`);
  }
}

async function fillLeaf(page: Page, leaf: Leaf, values: Values, path: string): Promise<void> {
  const value = values[leaf.name];
  const field = fieldAt(page, path);
  const choose = (choice: string): Promise<void> =>
    field.locator('label', { has: page.locator(`input[value="${choice}"]`) }).click();
  switch (leaf.type) {
    case 'text':
    case 'number':
    case 'date':
    case 'instant':
    case 'person':
      return field.fill(textOf(value));
    case 'quantity':
      return field.fill(isTypedQuantity(value) ? value.text : '');
    case 'choice':
    case 'yes-no':
    case 'pick':
      return choose(textOf(value));
    case 'choices': {
      // The boxes stand in the order of the choices.
      for (const choice of stringsOf(value))
        await field.locator('label.choice').nth(leaf.choices.indexOf(choice)).click();
      return;
    }
    default:
      throw new Error(`${path}: a field of type ${leaf.type} is filled in by its own tests`);
  }
}

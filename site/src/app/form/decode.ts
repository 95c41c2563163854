import { writeLocalTime } from './localTime.ts';
import { entries, type Leaf, type Node, type Value, type Values } from './nodes.ts';
import { writeCents, writePercent } from './number.ts';

const at = (body: unknown, path: string): unknown =>
  path
    .split('.')
    .reduce<unknown>(
      (inner, name) =>
        typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[name] : undefined,
      body,
    );

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function typedValue(leaf: Leaf, value: unknown, zone: string): Value {
  const list = leaf.type === 'choices' || leaf.type === 'people' || leaf.type === 'outages';
  if (value === null || value === undefined) return list ? [] : leaf.type === 'kept' ? null : '';
  switch (leaf.type) {
    case 'quantity':
      return { text: `${value as number}`, unit: leaf.unit };
    case 'number':
      return leaf.percent ? writePercent(value as number) : `${value as number}`;
    case 'coefficient':
      return `${value as number}`;
    case 'diffuser-constant':
      return { text: `${value as number}`, system: 'us' };
    case 'money':
      return writeCents(value as number);
    case 'instant':
      return writeLocalTime(value as string, zone);
    case 'yes-no':
      return value === true ? 'yes' : 'no';
    case 'position': {
      const { latitudeDeg, longitudeDeg, accuracyM } = value as {
        latitudeDeg: number;
        longitudeDeg: number;
        accuracyM: number | null;
      };
      return { latitude: String(latitudeDeg), longitude: String(longitudeDeg), accuracyM };
    }
    case 'choices':
    case 'people':
    case 'outages':
      return value as string[];
    case 'text':
      return leaf.many ? (value as string[]).join(', ') : (value as Value);
    case 'date':
    case 'choice':
    case 'person':
    case 'hydrant':
    case 'pick':
    case 'kept':
      return value as Value;
  }
}

/** What would have been typed to give this body. `encode` of it gives the body again, to the last digit. */
export function decode(nodes: readonly Node[], body: unknown, zone: string): Values {
  const values: Record<string, Value> = {};
  for (const entry of entries(nodes, 'always')) {
    if (entry.name.startsWith('_')) continue;
    const value = at(body, entry.name);
    if (entry.type === 'list')
      values[entry.name] = (Array.isArray(value) ? (value as unknown[]) : [])
        .filter(isRecord)
        .map((row) => decode(entry.item, row, zone));
    // Two branches may ask for the same place; the one that finds something speaks.
    else if (value !== undefined || values[entry.name] === undefined)
      values[entry.name] = typedValue(entry, value, zone);
  }
  return values;
}

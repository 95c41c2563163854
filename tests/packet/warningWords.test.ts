import { expect, it } from 'vitest';
import { en } from '../../shared/words/en/index.ts';
import { es } from '../../shared/words/es/index.ts';

/** Arguments of a message; two sentences about one warning name the same figures or fewer. */
const argumentsOf = (text: string): Set<string> =>
  new Set([...text.matchAll(/\{(\w+)[,}]/g)].map(([, name = '']) => name));
const field = 'hydraulics.warning.';

it.each([
  ['en', en, /\b(read (it |everything )?again|open another|close an|check (that|the)|repeat|correct the)\b/i],
  ['es', es, /\b(repita|abra|cierre|compruebe|corrija|revise|elija|anote|lea)\b/i],
] as const)(
  'in a packet a warning tells the payer what it means, and gives no orders: %s',
  (_, words, orders) => {
    const all = words as Readonly<Record<string, string>>;
    const codes = Object.keys(all)
      .filter((key) => key.startsWith(field))
      .map((key) => key.slice(field.length));
    expect(codes.length).toBeGreaterThan(20);
    for (const code of codes) {
      const said = all[`packet.warning.${code}`];
      expect(said, code).toBeDefined();
      expect(said, code).not.toMatch(orders);
      const there = argumentsOf(all[field + code] ?? '');
      for (const name of argumentsOf(said ?? '')) expect(there, `${code} ${name}`).toContain(name);
    }
  },
);

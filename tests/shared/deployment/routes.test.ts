import { describe, expect, it } from 'vitest';
import { environmentNames } from '../../../shared/deployment/environment.ts';
import { families, routes } from '../../../shared/deployment/routes.ts';
import { tables } from '../../../shared/deployment/tables.ts';

describe('routes', () => {
  it('stand once each', () => {
    const keys = routes.map(({ method, path }) => `${method} ${path.replaceAll(/\{\w+\}/g, '{}')}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('belong to a family, and every family has one', () => {
    expect([...new Set(routes.map(({ family }) => family))].sort()).toEqual([...families].sort());
  });

  it.each(routes.filter(({ allowed }) => allowed === 'anyone'))(
    '$method $path is read-only, as anyone may call it',
    ({ method }) => {
      expect(method).toBe('GET');
    },
  );

  it('open to anyone are listed here too, so that one more is a decision', () => {
    expect(routes.filter(({ allowed }) => allowed === 'anyone').map(({ path }) => path)).toEqual([
      '/api/health',
      '/api/utility',
      // Whoever has the address: it holds a secret of 256 bits.
      '/api/calendar/{file}',
      '/api/packet-keys',
    ]);
  });

  it('keep money and parties from the crew', () => {
    const crew = routes
      .filter(({ allowed }) => allowed !== 'anyone' && allowed.includes('crew'))
      .map(({ path }) => path);
    expect(crew.filter((path) => /claims|rate-books/.test(path))).toEqual([]);
  });

  it('stand under /api/, where the gateway and the pages’ address meet', () => {
    for (const { path } of routes) expect(path).toMatch(/^\/api\/[a-z]/);
  });
});

describe('environment names', () => {
  it('are distinct', () => {
    const all = [
      ...Object.values(environmentNames),
      ...Object.values(tables).map(({ environment }) => environment),
    ];
    expect(new Set(all).size).toBe(all.length);
    for (const name of all) expect(name).toMatch(/^[A-Z][A-Z0-9_]+$/);
  });
});

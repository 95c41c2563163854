import { beforeAll, describe, expect, it } from 'vitest';
import { MOST_BODY_BYTES, MOST_JSON_DEPTH } from '../../functions/http/json.ts';
import { routes } from '../../shared/deployment/routes.ts';
import { knownWorld, type KnownWorld } from './support/knownWorld.ts';

/** What every route that takes a body refuses before it looks at what the body says. The limits are the house's own. */
let known: KnownWorld;
beforeAll(async () => {
  known = await knownWorld();
});

const bodied = routes.filter(({ method }) => method === 'POST');
const nested = (depth: number): string => `{"a":${'['.repeat(depth)}${']'.repeat(depth)}}`;

describe.each(bodied)('$method $path', ({ path, allowed }) => {
  const send = async (body: string) => {
    const role = allowed === 'anyone' || allowed.includes('crew') ? 'crew' : 'clerk';
    const address = path.replaceAll(/\{\w+\}/g, 'x');
    const { status, body: answer } = await known.world.ask(address, role, {
      token: await known.tokenFor(role),
      body,
    });
    return { status, codes: answer.problems.map(({ code }) => code), answer };
  };

  it('refuses a body that is too large, and says how large one may be', async () => {
    const { status, codes, answer } = await send(JSON.stringify({ a: 'x'.repeat(MOST_BODY_BYTES) }));
    expect([status, codes]).toEqual([413, ['body-too-large']]);
    expect(answer.problems[0]!.params).toEqual({ maximumKb: 256 });
  });

  it('says of one that is nested too deep where, and how deep it may be; of one that only brackets fill, too', async () => {
    for (const depth of [MOST_JSON_DEPTH, 100_000]) {
      const { status, codes, answer } = await send(nested(depth));
      expect([status, codes]).toEqual([422, ['nested-too-deep']]);
      expect(answer.problems[0]).toMatchObject({ path: 'a.0.0.0.0.0', params: { maximum: 32 } });
    }
  });

  it('refuses a list of everything at once, with no more problems than anyone reads', async () => {
    const { status, answer } = await send(
      JSON.stringify(Object.fromEntries(Array.from({ length: 9000 }, (_, number) => [`f${number}`, number]))),
    );
    expect(status).toBe(422);
    expect(answer.problems.length).toBeLessThanOrEqual(200);
  });

  it('writes nothing of all that', () => {
    expect(known.written()).toEqual([]);
  });
});

it('no answer leads elsewhere, so nothing that was asked for can be made an address', async () => {
  for (const { method, path, allowed } of routes) {
    const role = allowed === 'anyone' ? null : allowed.includes('clerk') ? 'clerk' : 'crew';
    const address = path.replaceAll(
      /\{\w+\}/g,
      encodeURIComponent('https://elsewhere.example/\r\nset-cookie: a=b'),
    );
    const { status, headers } = await known.world.ask(
      `${address}?as=display&next=//elsewhere.example`,
      role,
      {
        method,
        ...(method === 'POST' ? { body: '{}' } : {}),
      },
    );
    expect([300, 301, 302, 303, 307, 308], `${method} ${path}`).not.toContain(status);
    expect([headers.get('location'), headers.get('set-cookie')], `${method} ${path}`).toEqual([null, null]);
  }
});

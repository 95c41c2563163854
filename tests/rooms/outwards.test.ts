import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '..', '..');
const sourcesOf = (...folders: string[]): [file: string, text: string][] =>
  folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name): [string, string] => [`${folder}/${name}`, readFileSync(join(root, folder, name), 'utf8')]),
  );

/** What could ask an address: Node's own clients and the ones that others use. */
const clients =
  /from '(?:node:)?(?:https?|http2|net|tls|dgram|dns(?:\/promises)?|undici|axios|got|node-fetch)'/;
/** The global `fetch`, and not a method of that name. */
const asks = /(?<![.\w])fetch\(|\bnew (?:WebSocket|EventSource)\(/;
/** `fetch(request: …)` of an interface is a method too. */
const declared = /^\s*fetch\(request: Request\)/m;

describe('server-side request forgery: what a request brings is never an address that a function asks', () => {
  const sources = sourcesOf('functions', 'shared');

  it('no function and no rule has a client but those of the AWS SDK', () => {
    expect(sources.length).toBeGreaterThan(400);
    const found = sources.filter(([, text]) => clients.test(text) || asks.test(text.replace(declared, '')));
    expect(found.map(([file]) => file)).toEqual([]);
  });

  it('the keys of the sign-in are read at an address of the environment', () => {
    const users = sources.filter(([, text]) => text.includes('createRemoteJWKSet('));
    expect(users.map(([file]) => file)).toEqual(['functions/http/signIn.ts']);
    const given = sources.filter(
      ([, text]) => /\bkeysAt\(/.test(text) && !text.includes('export const keysAt'),
    );
    expect(given.map(([file]) => file)).toEqual(['functions/wiring.ts']);
    expect(given[0]![1]).toContain('keysAt(tokenKeysUrl)');
  });

  it('and this would be seen', () => {
    for (const text of [
      'await fetch(url)',
      "import { get } from 'node:https';",
      "import { connect } from 'net';",
    ])
      expect(clients.test(text) || asks.test(text)).toBe(true);
    expect(asks.test('app.fetch(request)')).toBe(false);
  });
});

describe('formula injection', () => {
  it('every CSV that leaves quotes what a spreadsheet would run, by the one pattern', () => {
    const writers = sourcesOf('functions', 'shared', 'infra', 'site/src').filter(([, text]) =>
      /\bunparse\(/.test(text),
    );
    expect(writers.map(([file]) => file).sort()).toEqual([
      'infra/local/import/writeReport.ts',
      'shared/feeds/csv.ts',
      'shared/payments/ledgerCsv.ts',
    ]);
    for (const [file, text] of writers) expect(text, file).toContain('escapeFormulae: formulaCells');
  });

  it('and nothing else is handed out as CSV', () => {
    const named = sourcesOf('functions', 'shared').filter(([, text]) => text.includes('text/csv'));
    // The ledger's file and the open data's, which stand above, and the type that the latter is kept with.
    expect(named.map(([file]) => file).sort()).toEqual([
      'functions/records/ledger.ts',
      'functions/stores/published/published.ts',
      'shared/feeds/catalogue.ts',
    ]);
  });
});

describe('what was packed is unpacked up to a stated length', () => {
  it('wherever anything is', () => {
    const unpacking =
      /\b(?:gunzipSync|inflateSync|inflateRawSync|brotliDecompressSync|unzipSync|decompress)\(/g;
    const calls = sourcesOf('functions', 'shared', 'infra').flatMap(([file, text]) =>
      [...text.matchAll(unpacking)].map(({ index }) => ({ file, call: text.slice(index, index + 200) })),
    );
    expect(calls.length).toBeGreaterThan(6);
    // A ZIP's is asked of every entry before it is unpacked (shared/verify/file/readArchive.ts).
    const unlimited = calls.filter(({ call }) => !/maxOutputLength|filter: /.test(call));
    expect(unlimited).toEqual([]);
  });
});

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdir, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ports } from '../support/ports.ts';

/** The commands as a person runs them, each a process of its own. */
const commands = join(import.meta.dirname, '..', '..', 'infra', 'local', 'commands');
const PORT = ports.start;
let base: string;
beforeAll(async () => {
  base = await mkdtemp(join(tmpdir(), 'hsl-start-'));
});
afterAll(() => rm(base, { recursive: true, force: true }));

interface Run {
  readonly out: string;
  readonly err: string;
  readonly code: number | null;
}
function begin(command: string, variables: Record<string, string>, words: readonly string[] = []) {
  const child = spawn(process.execPath, [join(commands, `${command}.ts`), ...words], {
    env: {
      ...process.env,
      LANG: 'en_US.UTF-8',
      LC_ALL: '',
      INIT_CWD: base,
      PORT: String(PORT),
      ...variables,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let out = '';
  let err = '';
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString()));
  const ended = once(child, 'close').then(([code]): Run => ({ out, err, code: code as number | null }));
  const saying = async (words: RegExp): Promise<string> => {
    while (!words.test(out)) {
      const end = await Promise.race([
        ended,
        new Promise<null>((resolve) => setTimeout(() => resolve(null), 50)),
      ]);
      if (end) throw new Error(`ended with ${end.code}: ${end.out}${end.err}`);
    }
    return out;
  };
  return { child, ended, saying };
}
const run = (
  command: string,
  variables: Record<string, string> = {},
  words: readonly string[] = [],
): Promise<Run> => begin(command, variables, words).ended;

/** One line that says what to do, exit code 1, nothing else. */
function expectOneLine({ out, err, code }: Run, words: RegExp): void {
  expect([err.trim().split('\n').length, code, out]).toEqual([1, 1, '']);
  expect(err).toMatch(words);
}

describe('npm start with something in its way', () => {
  it('a taken port', async () => {
    const other = createServer().listen(PORT, '127.0.0.1');
    await once(other, 'listening');
    expectOneLine(await run('start', { DATA_DIR: 'taken' }), new RegExp(`Port ${PORT} is taken.*PORT=`));
    await new Promise((resolve) => other.close(resolve));
    await expect(stat(join(base, 'taken'))).rejects.toThrow();
  });

  it('a folder that cannot be written, or holds somebody’s files', async () => {
    await writeFile(join(base, 'file'), '');
    expectOneLine(await run('start', { DATA_DIR: 'file/data' }), /cannot be written.*DATA_DIR/);
    await mkdir(join(base, 'theirs'));
    await writeFile(join(base, 'theirs', 'thesis.txt'), 'mine');
    expectOneLine(await run('start', { DATA_DIR: 'theirs' }), /not from this program/);
    expectOneLine(await run('reset', { DATA_DIR: 'theirs' }), /not from this program/);
    expect(await readFile(join(base, 'theirs', 'thesis.txt'), 'utf8')).toBe('mine');
  });

  it('a port that is none, settings that are none, in the terminal’s language', async () => {
    expectOneLine(await run('start', { PORT: 'eighty' }), /"eighty"/);
    expectOneLine(await run('start', { PORT: '0' }), /from 1 to 65535/);
    expectOneLine(await run('start', { UTILITY_SETTINGS: '{"name":' }), /UTILITY_SETTINGS must be .* JSON/);
    expectOneLine(await run('start', { UTILITY_SETTINGS: 'utility.json' }), /not the name of a file/);
    expectOneLine(await run('start', { UTILITY_SETTINGS: '{"name":"X"}' }), /timeZone/);
    expectOneLine(await run('start', { PORT: 'ochenta', LANG: 'es_MX.UTF-8' }), /número entero/);
  });

  it('an option, which it has none of; --help says what can be set', async () => {
    expectOneLine(
      await run('start', { DATA_DIR: 'asked' }, ['--port=5000']),
      /no option --port=5000.*--help/,
    );
    const { code, out } = await run('start', { DATA_DIR: 'asked' }, ['--help']);
    expect(code).toBe(0);
    for (const name of ['PORT', 'HOST', 'DATA_DIR', 'UTILITY_SETTINGS']) expect(out).toContain(name);
    await expect(stat(join(base, 'asked'))).rejects.toThrow();
  });

  it('an address that this machine has not', async () => {
    // 192.0.2.0/24 is nobody's (RFC 5737), and no name ends in .invalid (RFC 6761).
    for (const HOST of ['192.0.2.1', 'nobody.invalid'])
      expectOneLine(await run('start', { HOST, DATA_DIR: 'elsewhere' }), /HOST is .*0\.0\.0\.0/);
    await expect(stat(join(base, 'elsewhere'))).rejects.toThrow();
  });

  it('a reset that asks for something deletes nothing', async () => {
    await mkdir(join(base, 'kept'));
    await writeFile(join(base, 'kept', 'hydrant-strike-ledger.json'), '{}');
    for (const word of ['--help', 'other'])
      expectOneLine(await run('reset', { DATA_DIR: 'kept' }, [word]), /deletes nothing .*DATA_DIR/);
    expect((await stat(join(base, 'kept'))).isDirectory()).toBe(true);
  });

  it('nothing to reset', async () => {
    expect(await run('reset', { DATA_DIR: 'never' })).toMatchObject({
      code: 0,
      out: expect.stringMatching(/nothing to delete/),
    });
  });
});

describe('npm start', () => {
  it('shows the whole house, keeps its data over a restart, and npm run reset starts over', async () => {
    const variables = { DATA_DIR: 'data' };
    const first = begin('start', variables);
    const said = await first.saying(/Ready in/);
    const origin = `http://localhost:${PORT}`;
    for (const path of [
      '/',
      '/crew/',
      '/desk/',
      '/local/sign-in?role=crew',
      '/local/sign-in?role=clerk',
      '/local/sign-in?role=manager',
    ])
      expect(said).toContain(origin + path);
    const packet = /Demo packet +(\S+)/.exec(said)?.[1] ?? '';
    expect((await readFile(packet)).subarray(0, 5).toString()).toBe('%PDF-');

    for (const path of ['/', '/es/', '/crew/', '/desk/', '/no/such/page']) {
      const response = await fetch(origin + path);
      const html = await response.text();
      expect([path, response.status]).toEqual([path, path === '/no/such/page' ? 404 : 200]);
      const policy = response.headers.get('content-security-policy') ?? '';
      expect(policy).toContain("default-src 'none'");
      expect(policy).not.toContain('unsafe');
      // What the policy forbids must not be there, or the page would be dead: script and style inside the HTML.
      expect([path, html.match(/<script(?![^>]*\bsrc=)[^>]*>|<style|\sstyle=|\son\w+=/g)]).toEqual([
        path,
        null,
      ]);
      for (const [, asset = ''] of html.matchAll(/(?:src|href)="(\/_assets\/[^"]+)"/g))
        expect([asset, (await fetch(origin + asset)).status]).toEqual([asset, 200]);
    }

    const signIn = await fetch(`${origin}/local/sign-in?role=clerk`, { redirect: 'manual' });
    expect(signIn.headers.get('location')).toMatch(/^\/desk\/#token=ey/);
    const token = signIn.headers.get('location')!.split('#token=')[1]!;
    const claims = async (): Promise<string> =>
      (await fetch(`${origin}/api/claims`, { headers: { authorization: `Bearer ${token}` } })).text();
    const before = await claims();
    expect(JSON.parse(before).claims.length).toBeGreaterThan(0);
    expectOneLine(await run('reset', variables), /is used by the server at/);
    expectOneLine(await run('start', { ...variables, PORT: String(PORT + 1) }), /is used by the server at/);

    // npm and the terminal both send it.
    first.child.kill('SIGINT');
    first.child.kill('SIGINT');
    setTimeout(() => first.child.kill('SIGINT'), 20);
    expect(await first.ended).toMatchObject({ code: 0, err: '' });
    await expect(fetch(origin)).rejects.toThrow();

    const second = begin('start', variables);
    const again = await second.saying(/Ready in/);
    expect(again).not.toMatch(/Loading the demo|did not close/);
    expect(again).toContain(packet);
    expect(await claims()).toBe(before);
    second.child.kill('SIGTERM');
    expect((await second.ended).code).toBe(0);

    expect(await run('reset', variables)).toMatchObject({ code: 0, out: expect.stringMatching(/Deleted/) });
    await expect(stat(join(base, 'data'))).rejects.toThrow();
  }, 180_000);
});

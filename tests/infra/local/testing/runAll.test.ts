import { mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runAll } from '../../../../infra/local/testing/runAll.ts';
import type { Phase, Step } from '../../../../infra/local/testing/step.ts';

const repository = join(import.meta.dirname, '..', '..', '..', '..');
const script = (name: string, code: string, limitS = 20): Step => ({
  name,
  command: ['node', '-e', code],
  limitS,
});
const vitest = (name: string, folder: string, limitS = 60): Step => ({
  name,
  command: ['vitest', 'run', '--root', folder],
  limitS,
  vitest: true,
});

describe('running everything', () => {
  let folder: string;
  const planted = (name: string): string => join(folder, 'planted', name);
  const run = async (phases: readonly Phase[]): Promise<{ lines: string[]; failed: number }> => {
    const lines: string[] = [];
    const print = (line: string) => void lines.push(line);
    const results = await runAll({ phases, folder: join(folder, 'logs'), root: repository, print });
    return { lines, failed: results.filter(({ counts }) => counts.failed > 0).length };
  };

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'run-all-'));
    const files = {
      good: "import { expect, it } from 'vitest';\nit('adds', () => expect(1 + 1).toBe(2));\nit.skip('later', () => {});\n",
      bad: "import { expect, it } from 'vitest';\nit('adds', () => expect(1 + 1).toBe(3));\nit('counts', () => {});\n",
      crash:
        "import { it } from 'vitest';\nit('ends the process', () => process.kill(process.ppid, 'SIGKILL'));\n",
      // Fails as long as its mark is not there, which its first run leaves behind.
      shaky:
        "import { existsSync, writeFileSync } from 'node:fs';\nimport { expect, it } from 'vitest';\nconst mark = new URL('./mark', import.meta.url);\nit('holds', () => {});\nit('shakes', () => { const there = existsSync(mark); writeFileSync(mark, ''); expect(there).toBe(true); });\n",
      hang: "import { it } from 'vitest';\nit('waits', () => { for (;;); });\n",
    };
    for (const [name, text] of Object.entries(files)) {
      await mkdir(planted(name), { recursive: true });
      await writeFile(join(planted(name), 'a.test.ts'), text);
    }
    await mkdir(planted('empty'), { recursive: true });
    await symlink(join(repository, 'node_modules'), join(folder, 'planted', 'node_modules'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('counts steps and tests, and goes on after a failing step', async () => {
    const { lines, failed } = await run([
      [[script('first', 'process.exit(3)'), script('second', '1')], [script('beside', '1')]],
      [[vitest('good', planted('good'))]],
      [[vitest('bad', planted('bad'))]],
    ]);
    expect(lines.at(-1)).toBe('4 passed, 2 failed, 1 skipped');
    expect(failed).toBe(2);
    expect(lines.join('\n')).toMatch(/FAILED {2}first .*\n[^]*✗ exit 3/);
    expect(lines.join('\n')).toMatch(/✗ adds: AssertionError: expected 2 to be 3/);
  });

  it('runs a file that failed once more where a step asks for it, and says so', async () => {
    const shaky = { ...vitest('shaky', planted('shaky')), secondTry: true } as const;
    const { lines } = await run([[[shaky]], [[{ ...vitest('bad', planted('bad')), secondTry: true }]]]);
    // Three of four hold: `shakes` on its second try, and a test that always fails is no better for one.
    expect(lines.at(-1)).toBe('3 passed, 1 failed');
    expect(lines).toContain('  held only on a second try: shakes');
    expect(lines.filter((line) => line.includes('second try'))).toHaveLength(1);
  });

  it('counts a step that could not ask as skipped, says why, and lets no other step do so', async () => {
    const away = script('away', "console.log('skipped: no network'); process.exit(75)");
    const { lines, failed } = await run([
      [
        [
          { ...away, maySkip: true },
          { ...away, name: 'not so' },
        ],
      ],
    ]);
    expect(lines.at(-1)).toBe('0 passed, 1 failed, 1 skipped');
    expect(failed).toBe(1);
    expect(lines[0]).toMatch(/^skipped away /);
    expect(lines[1]).toBe('  skipped: no network');
  });

  it('counts a run with no test as a failure', async () => {
    const { lines } = await run([[[vitest('empty', planted('empty'))]]]);
    expect(lines.at(-1)).toBe('0 passed, 1 failed');
  });

  it('counts a crash of the test program as a failure', async () => {
    const { lines } = await run([[[vitest('crash', planted('crash'))]]]);
    expect(lines.at(-1)).toMatch(/^0 passed, 1 failed$/);
  });

  it('stops a test that hangs, with what it started', async () => {
    const { lines } = await run([[[vitest('hang', planted('hang'), 5)]]]);
    expect(lines.at(-1)).toBe('0 passed, 1 failed');
    expect(lines.join('\n')).toMatch(/stopped after 5 s/);
  });

  it('stops what a step leaves behind, and keeps its last words', async () => {
    const listens =
      "const s=require('net').createServer().listen(0,'127.0.0.1',()=>console.log('port '+s.address().port))";
    const leaves = `require('child_process').spawn(process.execPath,['-e',${JSON.stringify(listens)}],{stdio:'inherit'});setTimeout(()=>process.exit(0),1000)`;
    const started = performance.now();
    const { lines } = await run([[[script('leaves', leaves)]]]);
    expect(lines.at(-1)).toBe('1 passed, 0 failed');
    expect(performance.now() - started).toBeLessThan(2900);
    const log = await readFile(join(folder, 'logs', 'leaves.log'), 'utf8');
    const port = Number(/port (\d+)/.exec(log)?.[1]);
    const answer = await new Promise((resolve) =>
      connect(port, '127.0.0.1')
        .once('connect', () => resolve('it still listens'))
        .once('error', (error: NodeJS.ErrnoException) => resolve(error.code)),
    );
    expect(answer).toBe('ECONNREFUSED');
  });

  it('counts a program that is not there, and a run of nothing, as failures', async () => {
    const gone: Step = { name: 'gone', command: ['no-such-program'], limitS: 5 };
    expect((await run([[[gone]]])).lines.at(-1)).toBe('0 passed, 1 failed');
    expect((await run([])).lines.at(-1)).toBe('0 passed, 1 failed');
  });
});

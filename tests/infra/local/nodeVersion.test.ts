import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { runInNewContext } from 'node:vm';
import { describe, expect, it } from 'vitest';

const repository = join(import.meta.dirname, '..', '..', '..');
const guard = readFileSync(join(repository, 'infra', 'local', 'nodeVersion.cjs'), 'utf8');

/** What the guard says and how it ends on a machine like this. */
function on(node: string, platform = 'linux', arch = 'x64', typescript: string | false = 'strip') {
  const said: string[] = [];
  let exit: number | null = null;
  const stopped = new Error('exit');
  try {
    runInNewContext(guard, {
      console: { error: (line: string) => said.push(line) },
      process: {
        versions: { node },
        features: { typescript },
        platform,
        arch,
        exit: (code: number) => {
          exit = code;
          throw stopped;
        },
      },
    });
  } catch (error) {
    if (error !== stopped) throw error;
  }
  return { said, exit };
}

describe('the Node guard', () => {
  it.each(['24.0.0', '24.21.0', '25.1.0'])('lets Node %s through without a word', (node) => {
    expect(on(node)).toEqual({ said: [], exit: null });
  });

  it.each([
    [
      'an old Node on Linux',
      on('20.20.2'),
      /^Node 24 or newer is needed and this is Node 20\.20\.2: run `npm ci`/,
    ],
    [
      'an old Node elsewhere',
      on('22.18.0', 'darwin', 'arm64'),
      /^Node 24 .* install Node 24 from nodejs\.org\.$/,
    ],
    ['an old Node on another Linux', on('22.18.0', 'linux', 's390x'), /install Node 24/],
    [
      'a Node told not to strip types',
      on('24.1.0', 'linux', 'x64', false),
      /^This Node 24\.1\.0 does not run TypeScript/,
    ],
  ])('answers %s with one line', (_, { said, exit }, words) => {
    expect(exit).toBe(1);
    expect(said).toHaveLength(1);
    expect(said[0]).toMatch(words);
    expect(said[0]).not.toContain('\n');
  });

  it('runs before every command that people start', () => {
    const { scripts } = JSON.parse(readFileSync(join(repository, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const commands = Object.entries(scripts).filter(
      ([name, command]) => /^node .*\.ts$/.test(command) && !name.startsWith('pre'),
    );
    expect(commands.length).toBeGreaterThan(5);
    for (const [name] of commands)
      expect(scripts[`pre${name}`], name).toBe('node infra/local/nodeVersion.cjs');
  });
});

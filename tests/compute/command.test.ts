import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { computations } from '../../shared/compute/registry.ts';

/** The real command, in its own process, as `npm run -s compute` starts it. */
const root = fileURLToPath(new URL('../..', import.meta.url));
const command = join(root, 'infra/local/commands/compute.ts');

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function run(words: readonly string[], input = ''): Promise<Ran> {
  return new Promise((resolve, reject) => {
    // Where the pinned Node is installed npm scripts use it; elsewhere the one that runs these tests is Node 24 too.
    const pinned = join(root, 'node_modules/.bin/node');
    const child = spawn(existsSync(pinned) ? pinned : process.execPath, [command, ...words], { cwd: root });
    let out = '';
    let err = '';
    child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString('utf8')));
    child.stderr.on('data', (chunk: Buffer) => (err += chunk.toString('utf8')));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, out, err }));
    // A command that refuses before it reads closes the pipe; that is not a failure of the test.
    child.stdin.on('error', () => undefined);
    child.stdin.end(input);
  });
}

const good = {
  staticPsi: 86,
  residualPsi: 42,
  outlets: [{ diameterIn: 2.5, coefficient: 0.8, pitotPsi: 28 }],
  targetResidualPsi: 20,
};

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'compute-'));
});
afterAll(() => rm(folder, { recursive: true }));

describe('an equipment schedule', () => {
  it('is read from a CSV file by its name, each row with its reasons in words', async () => {
    const file = join(folder, 'Schedule.CSV');
    await writeFile(
      file,
      'code,equipment,size,hp,unit,rate\n9001.1,"Pump, Trash",3 In,to 5,Hour,"1,013.00"\n9002,Saw,,,,5\n',
    );
    const { code, out, err } = await run(['equipment-schedule', file, '--locale', 'es']);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(JSON.parse(out)).toMatchObject({
      counts: { clean: 1, doubtful: 0, rejected: 1 },
      rows: [
        { code: '9001.1', machine: { machineCode: '9001.1', rateUsd: '1013.00', authorityId: 'schedule' } },
        { state: 'rejected', reasons: [expect.stringMatching(/^La unidad/)], machine: null },
      ],
    });
  });
  it('is refused with what would be right: no such file, a column that is missing, neither file nor text', async () => {
    const missing = await run(['equipment-schedule', join(folder, 'none.csv')]);
    expect(missing.code).toBe(2);
    expect(missing.err).toContain('scheduleFile');
    const columns = await run(
      ['equipment-schedule'],
      JSON.stringify({ scheduleText: 'code,unit\n1,hour\n' }),
    );
    expect(columns.code).toBe(2);
    expect(columns.err).toContain('A heading like one of these is needed');
    expect((await run(['equipment-schedule'], '{}')).code).toBe(2);
  });
});

describe('good input', () => {
  it('from standard input', async () => {
    const { code, out, err } = await run(['flow-test'], JSON.stringify(good));
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const result = JSON.parse(out) as Record<string, unknown>;
    // K. Kolb, course slides 15 and 16 (seen): 789 gpm, about 980 at 20 psi.
    expect(Math.round(result['measuredFlowGpm'] as number)).toBe(789);
    expect(result['availableFlowGpm']).toBeCloseTo(980, -1);
    expect(result).toMatchObject({ hydrantClass: 'B', drop: { psi: 44, sufficient: true }, warnings: [] });
  });

  it('from a file, with a byte-order mark', async () => {
    const file = join(folder, 'test.json');
    await writeFile(
      file,
      `\uFEFF${JSON.stringify({ staticPsi: 90, residualPsi: 85, measuredFlowGpm: 1140 })}`,
    );
    const { code, out } = await run(['flow-test', file]);
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      measuredFlowGpm: 1140,
      availableFlowGpm: null,
      hydrantClass: null,
      drop: { sufficient: false },
      warnings: [{ code: 'drop-too-small' }],
    });
  });

  it('as the documentation says it, through npm', () => {
    const { status, stdout } = spawnSync('npm', ['run', '-s', 'compute', '--', 'hydrant-class'], {
      cwd: root,
      input: '{"ratedFlowGpm":999.6}',
      encoding: 'utf8',
      shell: process.platform === 'win32',
    });
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual({ hydrantClass: 'A', color: 'green', wholeGpm: 1000 });
  });

  it('without a name lists every computation with its example', async () => {
    const { code, out } = await run([]);
    expect(code).toBe(0);
    for (const { name, example } of computations.values()) {
      expect(out).toContain(`\n${name}\n`);
      expect(out).toContain(`echo '${JSON.stringify(example)}' | npm run -s compute -- ${name}\n`);
    }
    expect((await run(['--locale', 'es'])).out).toContain('Cálculos:');
  });
});

describe('bad input: exit code 2, nothing on standard output, every problem a sentence', () => {
  it.each<[string, string[], string, string[]]>([
    [
      'several problems at once',
      ['flow-test'],
      '{"staticPsi":40,"residualPsi":42,"outlets":[{"diameterIn":"2.5","coefficient":8,"pitotPsi":0}],"targetResidualPsi":50,"note":1}',
      [
        'There are 6 problems with this input:',
        'outlets.0.diameterIn: This must be a number.',
        'outlets.0.coefficient: This must be 1 or less.',
        'outlets.0.pitotPsi: This must be more than 0.',
        'note: There is no field "note" here.',
        'residualPsi: ',
        'targetResidualPsi: ',
      ],
    ],
    [
      'missing fields',
      ['flow-test'],
      '{"outlets":[{"diameterIn":2.5,"coefficient":0.9}]}',
      [
        'There are 3 problems',
        'staticPsi: Fill this in (a number).',
        'residualPsi: Fill this in (a number).',
        'outlets.0.pitotPsi: Fill this in (a number).',
      ],
    ],
    [
      'neither outlets nor flow',
      ['flow-test'],
      '{"staticPsi":80,"residualPsi":40}',
      ['There is a problem', 'outlets: '],
    ],
    [
      'flow given twice',
      ['flow-test'],
      JSON.stringify({ ...good, measuredFlowGpm: 800 }),
      ['measuredFlowGpm: Give either the outlets or a metered flow, not both.'],
    ],
    [
      'not JSON',
      ['flow-test'],
      '{\n "staticPsi": 86,\n "residualPsi" 42 }',
      ['not valid JSON (line 3, column '],
    ],
    ['cut off', ['flow-test'], '{"staticPsi": 86', ['not valid JSON']],
    ['nothing', ['flow-test'], ' \n', ['There was no input.']],
    [
      'a list',
      ['flow-test'],
      '[]',
      ['There is a problem with this input:\n  This must be a group of fields.'],
    ],
    [
      'a number beyond all numbers',
      ['convert'],
      '{"value":1e999,"from":"psi","to":"kPa"}',
      ['value: This must be a number.'],
    ],
    [
      'units that do not fit',
      ['convert'],
      '{"value":1,"from":"psi","to":"gal"}',
      ['to: ', 'Choose one of: psi, kPa, bar.'],
    ],
    ['an unknown unit', ['convert'], '{"value":1,"from":"psi","to":"PSI"}', ['to: Choose one of: psi, kPa']],
    [
      'an unknown name',
      ['flowtest'],
      '',
      ['There is no computation "flowtest". Choose one of: flow-test, outlet-flow,'],
    ],
    [
      'no such file',
      ['flow-test', '/nowhere/test.json'],
      '',
      ['Cannot read /nowhere/test.json: there is no such file.'],
    ],
    ['a folder', ['flow-test', '/'], '', ['Cannot read /: it is a folder.']],
    ['too many words', ['flow-test', 'a', 'b', 'c'], '', ['this is too many: b c.']],
    [
      'in Spanish',
      ['flow-test', '--locale', 'es'],
      '{"staticPsi":"x"}',
      ['Hay 3 problemas', 'staticPsi: Debe ser un número.'],
    ],
    ['an unknown language', ['flow-test', '--locale', 'fr'], '', ['--locale en, --locale es']],
  ])('%s', async (_, words, input, sentences) => {
    const { code, out, err } = await run(words, input);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    for (const sentence of sentences) expect(err).toContain(sentence);
    expect(err).not.toMatch(/\[|\bat .*\.ts:\d|Error/);
  });

  it('refuses a value whose answer no number can hold, and never answers null', async () => {
    const { code, out, err } = await run(['convert'], '{"value":1e308,"from":"mi","to":"in"}');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('value:');
  });
});

import { describe, expect, it } from 'vitest';
import { readOptions } from '../../infra/local/import/options.ts';
import { refusal, today } from './support.ts';

const read = (...argv: string[]) => readOptions(argv, today, 'en');
const refused = (...argv: string[]) => refusal(Promise.resolve().then(() => read(...argv)));

describe('the command line of the import', () => {
  it('needs a file and nothing else', () => {
    expect(read('a.csv')).toEqual({
      file: 'a.csv',
      dryRun: false,
      json: false,
      report: null,
      allowFewer: false,
      by: null,
      locale: 'en',
      choices: { map: {}, units: {}, crs: null, dateOrder: null, accept: new Set(), today },
    });
  });
  it('takes every option, with a space or an equals sign', () => {
    expect(
      read(
        '--dry-run',
        '--crs',
        '+proj=utm +zone=18 +datum=NAD83',
        'a.csv',
        '--map',
        'place=NO+STREET NAME',
        '--map=type=',
        '--unit',
        'mainSizeIn=mm',
        '--date-order=dmy',
        '--accept',
        'mixed-units,swapped-axes',
        '--report=r.csv',
        '--json',
        '--allow-fewer',
        '--by',
        'M-1',
        '--lang',
        'es',
      ),
    ).toMatchObject({
      file: 'a.csv',
      dryRun: true,
      json: true,
      report: 'r.csv',
      allowFewer: true,
      by: 'M-1',
      locale: 'es',
      choices: {
        map: { place: ['NO', 'STREET NAME'], type: [] },
        units: { mainSizeIn: 'mm' },
        crs: '+proj=utm +zone=18 +datum=NAD83',
        dateOrder: 'dmy',
        accept: new Set(['mixed-units', 'swapped-axes']),
      },
    });
  });
  it('answers --help', () => expect(read('--help')).toBe('help'));
  it('says every mistake at once', async () => {
    expect(
      await refused(
        '--dry',
        '--map',
        'plaice=X',
        '--unit',
        'type=mm',
        '--accept',
        'anything',
        '--date-order',
        'ymd',
        '--lang',
        'fr',
      ),
    ).toEqual([
      'unknown-option',
      'no-file',
      'unknown-field',
      'field-has-no-unit',
      'not-acceptable',
      'no-such-date-order',
      'no-such-language',
    ]);
    expect(await refused('a.csv', 'b.csv')).toEqual(['one-file']);
    expect(await refused('a.csv', '--crs')).toEqual(['option-needs-value']);
    expect(await refused('a.csv', '--crs', '--dry-run')).toEqual(['option-needs-value']);
    expect(await refused('a.csv', '--map', 'place')).toEqual(['map-form']);
    expect(await refused('a.csv', '--unit', 'mainSizeIn=gpm')).toEqual(['no-such-unit']);
  });
});

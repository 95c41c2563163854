import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { demoModels } from '../../infra/local/demo/models.ts';
import { exampleCsv } from '../../infra/local/import/models/example.ts';
import { modelColumns } from '../../shared/models/columns.ts';
import { readModels } from '../../shared/models/readModels.ts';
import { jointsOf } from '../../shared/tightening/fromModel.ts';
import { hasWords, sayProblem } from '../../shared/words/index.ts';

/** Models from a spreadsheet. The slips are those that spreadsheets and people make (common practice, no source). */

const good = 'M1,model,Model One,dry barrel';
const file = (...lines: readonly string[]): string =>
  [
    'model,line,name,type,opens,number,from,to,unit,shape,measured,threads,wrench percent,lock,part number,replaces,what,manual,page',
    ...lines,
  ].join('\n');
/** A line by its columns, so that a case shows only what it is about. */
const line = (cells: Record<string, string>): string => {
  const all: Record<string, string> = { model: 'M1', ...cells };
  return Papa.unparse([modelColumns.map((column) => all[column] ?? '')]);
};
const joint = (cells: Record<string, string> = {}) =>
  line({ line: 'joint', name: 'Flange', from: '72', unit: 'ft-lb', manual: 'Manual', page: '9', ...cells });
const wrench = (cells: Record<string, string> = {}) =>
  line({ line: 'wrench', name: 'Operating nut', shape: 'pentagon', from: '1.5', unit: 'in', ...cells });
const kit = (cells: Record<string, string> = {}) =>
  line({ line: 'kit', name: 'Kit', 'part number': 'K-1', ...cells });

describe('what is read', () => {
  test('the example: a line of each kind', () => {
    const { models, problems } = readModels(exampleCsv);
    expect(problems).toEqual([]);
    const [model] = models;
    expect(model).toMatchObject({
      modelId: 'EX-1',
      type: 'dry-barrel',
      opens: 'left',
      buryDepth: { fromFt: 3, toFt: 8 },
      outlets: [
        { kind: 'hose', diameterIn: 2.5 },
        { kind: 'hose', diameterIn: 2.5 },
        { kind: 'pumper', diameterIn: 4.5 },
      ],
      lubricants: [
        { where: 'Stem threads', what: 'Food-grade grease', manual: 'Example manual', page: '19' },
      ],
    });
    expect(model?.joints).toHaveLength(3);
    expect(model?.wrenches?.map(({ size }) => size)).toEqual([1.5, 1.0625]);
    expect(model?.kitContents[1]).toEqual({
      partNumber: 'EX-GSK',
      description: 'Nozzle section gasket set',
      quantity: 2,
      replaces: null,
    });
  });

  test('every model of the demo, written out as a spreadsheet would, comes back the same', () => {
    const say = (value: string | number | null | undefined): string => String(value ?? '');
    const units = { 'lbf.ft': 'ft-lb', 'lbf.in': 'in-lb', 'N.m': 'N-m', 'kgf.m': 'kgf-m' } as const;
    const rows = demoModels.flatMap((model) => {
      const of = (cells: Record<string, string | number | null | undefined>): string =>
        line(
          Object.fromEntries(Object.entries({ ...cells, model: model.modelId }).map(([k, v]) => [k, say(v)])),
        );
      return [
        of({
          line: 'model',
          name: model.name,
          type: model.type.replace('-', ' '),
          opens: model.opens,
          from: model.buryDepth?.fromFt,
          to: model.buryDepth?.toFt,
          unit: model.buryDepth ? 'ft' : '',
          manual: model.manual,
        }),
        ...model.outlets.map((each) =>
          of({ line: 'nozzle', name: each.kind, from: each.diameterIn, unit: 'in' }),
        ),
        ...jointsOf(model).map((each) =>
          each.kind === 'bolts'
            ? of({
                line: 'joint',
                name: each.joint,
                number: each.bolts,
                from: each.torque,
                to: each.torqueTo,
                unit: each.unit ? units[each.unit] : '',
                threads: each.condition,
                'wrench percent': each.wrenchTolerancePercent,
                manual: each.manual,
                page: each.page,
              })
            : of({
                line: 'nut',
                name: each.joint,
                number: each.bolts,
                from: each.turns,
                to: each.turnsTo,
                lock: each.lock ? 'yes' : 'no',
                manual: each.manual,
                page: each.page,
              }),
        ),
        ...(model.wrenches ?? []).map((each) =>
          of({
            line: 'wrench',
            name: each.fits,
            shape: each.shape,
            from: each.size,
            unit: each.unit,
            measured: each.measured?.replaceAll('-', ' '),
          }),
        ),
        ...(model.lubricants ?? []).map((each) =>
          of({ line: 'lubricant', name: each.where, what: each.what, manual: each.manual, page: each.page }),
        ),
        ...model.kitContents.map((each) =>
          of({
            line: 'kit',
            'part number': each.partNumber,
            name: each.description,
            number: each.quantity,
            replaces: each.replaces,
          }),
        ),
      ];
    });
    const { models, problems } = readModels(file(...rows));
    expect(problems).toEqual([]);
    expect(models).toEqual(
      demoModels.map(({ torques: _before, ...model }) => ({
        ...model,
        joints: jointsOf({ torques: _before, joints: model.joints }),
        kitContents: model.kitContents.map((part) => ({ ...part, replaces: part.replaces ?? null })),
        wrenches: model.wrenches ?? [],
        lubricants: model.lubricants ?? [],
      })),
    );
  });

  test.each([
    [
      'semicolons, a mark at the start, columns in another order',
      '\ufeffline;model;type;name\nmodel;M1;Wet Barrel;Model One',
    ],
    [
      'a first line that states the separator',
      'sep=;\r\nmodel;line;name;type\r\nM1;model;Model One;wet_barrel\r\n',
    ],
    ['blank lines and blank columns', 'model,line,name,type,,\n\n,,,\nM1,MODEL,Model One,wet-barrel,,\n'],
  ])('%s', (_what, text) => {
    expect(readModels(text)).toMatchObject({
      problems: [],
      models: [{ modelId: 'M1', name: 'Model One', type: 'wet-barrel' }],
    });
  });

  test('depths in metres and widths in millimetres are kept in the units of the record', () => {
    const { models, problems } = readModels(
      file(
        line({ line: 'model', name: 'One', type: 'dry barrel', from: '1', to: '2', unit: 'm' }),
        line({ line: 'nozzle', name: 'hose', from: '63.5', unit: 'mm' }),
      ),
    );
    expect(problems).toEqual([]);
    // 1 ft is 0.3048 m, 1 in is 25.4 mm, both exactly (NIST SP 811).
    expect(models[0]).toMatchObject({
      buryDepth: { fromFt: 3.281, toFt: 6.562 },
      outlets: [{ diameterIn: 2.5 }],
    });
  });
});

/** What, the lines after the header, and what is told: code, row, column. */
const slips: readonly (readonly [
  string,
  readonly string[],
  readonly (readonly [string, number, string])[],
])[] = [
  [
    'no code',
    [line({ model: '', line: 'model', name: 'X', type: 'wall' })],
    [['models-no-code', 2, 'model']],
  ],
  ['no kind of line', [good, line({ name: 'X' })], [['models-no-kind', 3, 'line']]],
  ['a kind that is none', [good, line({ line: 'bolt', name: 'X' })], [['models-no-such-word', 3, 'line']]],
  ['a model twice', [good, good], [['models-model-twice', 3, 'model']]],
  [
    'a part of a model that has no line',
    [good, kit({ model: 'M2' })],
    [['models-no-model-line', 3, 'model']],
  ],
  ['no name', [line({ line: 'model', type: 'wall' })], [['models-needed', 2, 'name']]],
  ['no type', [line({ line: 'model', name: 'X' })], [['models-needed', 2, 'type']]],
  [
    'a type that is none',
    [line({ line: 'model', name: 'X', type: 'dry' })],
    [['models-no-such-word', 2, 'type']],
  ],
  [
    'half a range of depths',
    [line({ line: 'model', name: 'X', type: 'wall', from: '3', unit: 'ft' })],
    [['models-range-half', 2, 'to']],
  ],
  [
    'depths upside down',
    [line({ line: 'model', name: 'X', type: 'wall', from: '8', to: '3', unit: 'ft' })],
    [['range-upside-down', 2, 'to']],
  ],
  [
    'a depth beyond any',
    [line({ line: 'model', name: 'X', type: 'wall', from: '3', to: '96', unit: 'ft' })],
    [['above-maximum', 2, 'to']],
  ],
  [
    'depths in no unit',
    [line({ line: 'model', name: 'X', type: 'wall', from: '3', to: '8' })],
    [['models-needs-unit', 2, 'unit']],
  ],
  ['a torque in no unit', [good, joint({ unit: '' })], [['models-needs-unit', 3, 'unit']]],
  [
    'a torque in a unit of another thing',
    [good, joint({ unit: 'psi' })],
    [['models-no-such-word', 3, 'unit']],
  ],
  ['a torque without its page', [good, joint({ page: '' })], [['torque-needs-source', 3, 'page']]],
  [
    'a torque with its unit in the cell',
    [good, joint({ from: '72 ft-lb' })],
    [['models-unit-in-number', 3, 'from']],
  ],
  ['a comma for a point', [good, wrench({ from: '1,5' })], [['models-comma', 3, 'from']]],
  ['a fraction that became a day', [good, wrench({ from: '1-Feb' })], [['models-day', 3, 'from']]],
  [
    'a part number that became a day',
    [good, kit({ 'part number': 'Mar-45' })],
    [['models-day', 3, 'part number']],
  ],
  [
    'a part number that was rounded',
    [good, kit({ 'part number': '1.2E+08' })],
    [['models-rounded', 3, 'part number']],
  ],
  ['a formula that failed', [good, kit({ name: '#REF!' })], [['models-formula', 3, 'name']]],
  ['words for a number', [good, joint({ number: 'eight' })], [['models-not-a-number', 3, 'number']]],
  ['half a bolt', [good, joint({ number: '7.5' })], [['wrong-type', 3, 'number']]],
  ['no kit at all of it', [good, kit({ number: '0' })], [['below-minimum', 3, 'number']]],
  ['a wrench as large as the hydrant', [good, wrench({ from: '36' })], [['above-maximum', 3, 'from']]],
  ['a wrench of no size', [good, wrench({ from: '' })], [['models-needed', 3, 'from']]],
  [
    'a column that the line has no use for',
    [good, wrench({ 'part number': 'K-1' })],
    [['models-not-for-this-line', 3, 'part number']],
  ],
  ['a joint twice', [good, joint(), joint()], [['joint-twice', 4, 'name']]],
  [
    'a lock that is neither',
    [good, line({ line: 'nut', name: 'Nut', from: '0.25', lock: 'maybe', manual: 'M', page: '1' })],
    [['models-no-such-word', 3, 'lock']],
  ],
  ['cells beyond the last column', [good, `${kit()},stray`], [['models-too-many-cells', 3, '']]],
  [
    'several at once, in the order of the file',
    [joint({ unit: '' }), good, kit({ number: 'x', 'part number': '' })],
    [
      ['models-needs-unit', 2, 'unit'],
      ['models-needed', 4, 'part number'],
      ['models-not-a-number', 4, 'number'],
    ],
  ],
];

describe('what is doubtful is named, and nothing is read', () => {
  test.each(slips)('%s', (_what, lines, told) => {
    const { models, problems } = readModels(file(...lines));
    expect(models).toEqual([]);
    const found = problems.map(({ code, params }) => [code, params['line'], params['column'] ?? '']);
    expect(found.sort()).toEqual([...told].sort());
    for (const each of problems)
      for (const locale of ['en', 'es'] as const) {
        expect(hasWords(`problem.${each.code}`)).toBe(true);
        expect(sayProblem(locale, each)).not.toMatch(/\{|undefined|\[/);
      }
  });

  test.each([
    ['an empty file', '', 'models-no-header'],
    ['no header', 'M1,model,X,wall', 'models-no-header'],
    ['a header and nothing more', 'model,line,name\n\n', 'models-empty'],
    ['a column that is none', 'model,line,name,type,torque\nM1,model,X,wall,7', 'models-unknown-column'],
    ['a column twice', 'model,line,name,name\nM1,model,X,Y', 'models-column-twice'],
    ['a quotation mark that never closes', 'model,line,name,type\nM1,model,"X,wall\n', 'models-quote-open'],
  ])('%s', (_what, text, code) => {
    const { models, problems } = readModels(text);
    expect(models).toEqual([]);
    expect(problems.map((each) => each.code)).toEqual([code]);
  });
});

import { problem, type Problem } from '../problems/problem.ts';
import { problemsFromZod } from '../problems/fromZod.ts';
import { hydrantModel } from '../submissions/forms/hydrantModel.ts';
import type { BodyOf } from '../submissions/submission.ts';
import { convert } from '../units/convert.ts';
import { Cells } from './cells.ts';
import type { LineKind, ModelColumn } from './columns.ts';
import { readSheet } from './sheet.ts';

type Model = BodyOf<'hydrant-model'>;

export interface ModelsRead {
  readonly models: readonly Model[];
  /** Every doubtful cell at once. With one of them nothing is loaded. `params.line` counts from 1, the header line. */
  readonly problems: readonly Problem[];
}

/** A model while its lines are read, and on which line each of its parts stands. */
interface Draft {
  readonly at: number;
  readonly lines: Map<string, number>;
  readonly body: Record<string, unknown> & Record<ListName, unknown[]>;
}
type ListName = 'outlets' | 'joints' | 'kitContents' | 'wrenches' | 'lubricants';
const listOf: Readonly<Record<Exclude<LineKind, 'model'>, ListName>> = {
  nozzle: 'outlets',
  joint: 'joints',
  nut: 'joints',
  wrench: 'wrenches',
  lubricant: 'lubricants',
  kit: 'kitContents',
};

/** Which column a field of the record was read from, for what the form itself finds wrong with it. */
const columnOfField: Readonly<Record<string, ModelColumn>> = {
  modelId: 'model',
  joint: 'name',
  fits: 'name',
  where: 'name',
  description: 'name',
  kind: 'name',
  bolts: 'number',
  quantity: 'number',
  partNumber: 'part number',
  torque: 'from',
  turns: 'from',
  size: 'from',
  diameterIn: 'from',
  fromFt: 'from',
  torqueTo: 'to',
  turnsTo: 'to',
  toFt: 'to',
  condition: 'threads',
  wrenchTolerancePercent: 'wrench percent',
};

/**
 * Reads hydrant models from a CSV of one line for each thing (docs/models-csv.md has the columns). Whatever is doubtful
 * is named with its line, its column and what would be right; what is read is checked by the form's own schema, so that a
 * file can bring in nothing that a person could not have typed.
 */
export function readModels(text: string): ModelsRead {
  const { lines, problems } = readSheet(text);
  const found: Problem[] = [...problems];
  const drafts = new Map<string, Draft>();
  const rest: { cells: Cells; kind: Exclude<LineKind, 'model'>; modelId: string }[] = [];
  for (const line of lines) {
    const cells = new Cells(line);
    const modelId = cells.has('model') ? cells.code('model') : cells.wrong('model', 'models-no-code');
    const kind = cells.has('line') ? cells.choice('line', 'line') : cells.wrong('line', 'models-no-kind');
    if (kind !== null) cells.settle(kind);
    if (kind === 'model' && modelId !== null) {
      const before = drafts.get(modelId);
      if (before) cells.wrong('model', 'models-model-twice', { model: modelId, first: before.at });
      else drafts.set(modelId, { at: line.at, lines: new Map(), body: modelBody(modelId, cells) });
    } else if (kind !== null && kind !== 'model' && modelId !== null) rest.push({ cells, kind, modelId });
    found.push(...(kind === 'model' || kind === null || modelId === null ? cells.problems : []));
  }
  for (const { cells, kind, modelId } of rest) {
    const draft = drafts.get(modelId);
    if (!draft) cells.wrong('model', 'models-no-model-line', { model: modelId });
    const item = readers[kind](cells);
    if (draft) {
      const list = draft.body[listOf[kind]];
      draft.lines.set(`${listOf[kind]}.${list.length}`, cells.at);
      list.push(item);
    }
    found.push(...cells.problems);
  }
  const named = new Set(found.map(({ path }) => path));
  const models: Model[] = [];
  for (const draft of drafts.values()) {
    const parsed = hydrantModel.body.safeParse(draft.body, { reportInput: true });
    if (parsed.success) models.push(parsed.data);
    else
      for (const wrong of problemsFromZod(parsed.error.issues)) {
        const placed = placedIn(draft, wrong);
        // What the cell itself was told already needs no second word.
        if (!named.has(placed.path)) found.push(placed);
      }
  }
  return {
    models: found.length === 0 ? models : [],
    problems: found.sort((a, b) => Number(a.params['line'] ?? 0) - Number(b.params['line'] ?? 0)),
  };
}

/** A problem of the record, told of the cell that it came from. */
function placedIn({ at, lines }: Draft, { code, path, params }: Problem): Problem {
  const [list = '', index = ''] = path.split('.');
  const line = lines.get(`${list}.${index}`) ?? at;
  const field = path.split('.').at(-1) ?? '';
  const column = columnOfField[field] ?? field;
  return problem(code, `${line}:${column}`, { ...params, line, column });
}

function modelBody(modelId: string, cells: Cells): Draft['body'] {
  const [from, to] = [cells.number('from'), cells.number('to')];
  const unit = cells.choice('unit', 'depthUnit');
  const given = cells.has('from') || cells.has('to');
  if (given && !cells.has('unit')) cells.wrong('unit', 'models-needs-unit', { units: 'ft, m' });
  for (const column of ['from', 'to'] as const)
    if (given && !cells.has(column)) cells.wrong(column, 'models-range-half');
  const ft = (value: number): number =>
    unit === 'm' ? Math.round(convert(value, 'm', 'ft') * 1000) / 1000 : value;
  return {
    modelId,
    name: cells.text('name'),
    type: cells.choice('type', 'type'),
    opens: cells.choice('opens', 'opens') ?? 'unknown',
    manual: cells.text('manual'),
    outlets: [],
    joints: [],
    kitContents: [],
    wrenches: [],
    lubricants: [],
    ...(from !== null && to !== null ? { buryDepth: { fromFt: ft(from), toFt: ft(to) } } : {}),
  };
}

const readers: Readonly<Record<Exclude<LineKind, 'model'>, (cells: Cells) => unknown>> = {
  nozzle: (cells) => {
    const size = cells.number('from');
    const unit = cells.choice('unit', 'sizeUnit');
    return {
      kind: cells.choice('name', 'nozzle'),
      diameterIn: size === null || unit !== 'mm' ? size : Math.round(convert(size, 'mm', 'in') * 1000) / 1000,
    };
  },
  joint: (cells) => {
    if (cells.has('from') && !cells.has('unit'))
      cells.wrong('unit', 'models-needs-unit', { units: 'ft-lb, in-lb, N-m, kgf-m' });
    return {
      kind: 'bolts',
      joint: cells.text('name'),
      bolts: cells.number('number'),
      torque: cells.number('from'),
      torqueTo: cells.number('to'),
      unit: cells.choice('unit', 'torqueUnit'),
      condition: cells.choice('threads', 'threads'),
      wrenchTolerancePercent: cells.number('wrench percent'),
      manual: cells.text('manual'),
      page: cells.text('page'),
    };
  },
  nut: (cells) => ({
    kind: 'back-off',
    joint: cells.text('name'),
    bolts: cells.number('number'),
    turns: cells.number('from'),
    turnsTo: cells.number('to'),
    lock: cells.choice('lock', 'yesNo'),
    manual: cells.text('manual'),
    page: cells.text('page'),
  }),
  wrench: (cells) => ({
    fits: cells.text('name'),
    shape: cells.choice('shape', 'shape'),
    size: cells.number('from'),
    unit: cells.choice('unit', 'sizeUnit'),
    measured: cells.choice('measured', 'measured'),
  }),
  lubricant: (cells) => ({
    where: cells.text('name'),
    what: cells.text('what'),
    manual: cells.text('manual'),
    page: cells.text('page'),
  }),
  kit: (cells) => ({
    partNumber: cells.code('part number'),
    description: cells.text('name'),
    quantity: cells.has('number') ? cells.number('number') : 1,
    replaces: cells.text('replaces'),
  }),
};

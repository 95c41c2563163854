/** What a line of the file is about. Each line belongs to the model whose code stands in its first column. */
export const lineKinds = ['model', 'nozzle', 'joint', 'nut', 'wrench', 'lubricant', 'kit'] as const;
export type LineKind = (typeof lineKinds)[number];

/** The columns, in the order of the example file. Their names are ours and plain; any order in the file will do. */
export const modelColumns = [
  'model',
  'line',
  'name',
  'type',
  'opens',
  'number',
  'from',
  'to',
  'unit',
  'shape',
  'measured',
  'threads',
  'wrench percent',
  'lock',
  'part number',
  'replaces',
  'what',
  'manual',
  'page',
] as const;
export type ModelColumn = (typeof modelColumns)[number];

/** Which columns a line of each kind may fill, and which it has to. `model` and `line` stand on every line. */
export const columnsOf: Readonly<
  Record<LineKind, { readonly needs: readonly ModelColumn[]; readonly may: readonly ModelColumn[] }>
> = {
  model: { needs: ['name', 'type'], may: ['opens', 'from', 'to', 'unit', 'manual'] },
  nozzle: { needs: ['name', 'from', 'unit'], may: [] },
  joint: {
    needs: ['name'],
    may: ['number', 'from', 'to', 'unit', 'threads', 'wrench percent', 'manual', 'page'],
  },
  nut: { needs: ['name', 'from', 'lock', 'manual', 'page'], may: ['number', 'to'] },
  wrench: { needs: ['name', 'shape', 'from', 'unit'], may: ['measured'] },
  lubricant: { needs: ['name', 'what'], may: ['manual', 'page'] },
  kit: { needs: ['part number', 'name'], may: ['number', 'replaces'] },
};

/** Words that a cell may have, as people write them, and what each is kept as. */
export const choices = {
  line: Object.fromEntries(lineKinds.map((kind) => [kind, kind])) as Readonly<Record<string, LineKind>>,
  type: {
    'dry barrel': 'dry-barrel',
    'wet barrel': 'wet-barrel',
    underground: 'underground',
    wall: 'wall',
    standpipe: 'standpipe',
    unknown: 'unknown',
  },
  opens: { left: 'left', right: 'right', unknown: 'unknown' },
  nozzle: { hose: 'hose', pumper: 'pumper' },
  depthUnit: { ft: 'ft', m: 'm' },
  sizeUnit: { in: 'in', mm: 'mm' },
  torqueUnit: { 'ft-lb': 'lbf.ft', 'in-lb': 'lbf.in', 'n-m': 'N.m', 'kgf-m': 'kgf.m' },
  shape: { pentagon: 'pentagon', square: 'square', hex: 'hex', other: 'other' },
  measured: { 'flat to flat': 'flat-to-flat', 'point to flat': 'point-to-flat' },
  threads: { dry: 'dry', lubricated: 'lubricated' },
  yesNo: { yes: true, no: false },
} as const;

import { tokensOf, type Token } from './tokens.ts';

/** What a page's program does besides showing text, as far as it can hide, cover or replace what a reader sees. */
export interface Program {
  /** Names of the objects that it draws (`Do`), in order. */
  readonly drawn: readonly string[];
  /** Ways of drawing that no packet uses: pictures within the program, patterns, shadings, transparency, layers. */
  readonly strange: readonly string[];
  /** Text that is there for a search and not for the eye: not painted, white, tiny, or outside what may be painted. */
  readonly hiddenText: boolean;
  /** Something is painted over text that stood there before. */
  readonly coveredText: boolean;
}

type Matrix = readonly [number, number, number, number, number, number];
type Box = readonly [left: number, bottom: number, right: number, top: number];

interface State {
  readonly matrix: Matrix;
  /** How light the fill is, 0 black to 1 white. */
  readonly light: number;
  readonly lineWidth: number;
  readonly size: number;
  readonly mode: number;
  readonly clip: Box;
}

/** Everything else that ISO 32000-2, annex A, has is strange in a packet. */
const usual = new Set(
  'q Q cm BT ET Tm Td TD T* Tf TL Tc Tw Tr TJ Tj BDC BMC EMC m l c v y h re S s f F f* B B* b b* n W W* w J j M d cs CS sc SC scn SCN g G rg RG k K Do'.split(
    ' ',
  ),
);
/** A packet's smallest text is half as large again, points. */
const LEAST_SIZE = 4;
/** Its lightest ink is far darker. */
const MOST_LIGHT = 0.8;
/** A rule is thinner, points; what is as thick as this can cover text. */
const COVERING_STROKE = 3;
/** How wide a sign is on average at the least, of its size. */
const NARROW = 0.4;
const EVERYWHERE: Box = [-Infinity, -Infinity, Infinity, Infinity];
const SAME: Matrix = [1, 0, 0, 1, 0, 0];

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[1] * b[2],
  a[0] * b[1] + a[1] * b[3],
  a[2] * b[0] + a[3] * b[2],
  a[2] * b[1] + a[3] * b[3],
  a[4] * b[0] + a[5] * b[2] + b[4],
  a[4] * b[1] + a[5] * b[3] + b[5],
];
const placed = (x: number, y: number, m: Matrix): readonly [number, number] => [
  x * m[0] + y * m[2] + m[4],
  x * m[1] + y * m[3] + m[5],
];
const within = ([x, y]: readonly [number, number], [left, bottom, right, top]: Box): boolean =>
  x >= left && x <= right && y >= bottom && y <= top;
const boxOf = (points: readonly (readonly [number, number])[]): Box =>
  points.reduce<Box>(
    ([l, b, r, t], [x, y]) => [Math.min(l, x), Math.min(b, y), Math.max(r, x), Math.max(t, y)],
    [Infinity, Infinity, -Infinity, -Infinity],
  );
const both = (a: Box, b: Box): Box => [
  Math.max(a[0], b[0]),
  Math.max(a[1], b[1]),
  Math.min(a[2], b[2]),
  Math.min(a[3], b[3]),
];

/** How light a colour is: gray, red-green-blue or cyan-magenta-yellow-black by the count of its parts. */
function lightOf(parts: readonly number[]): number {
  const [a = 0, b = 0, c = 0, black = 0] = parts;
  if (parts.length === 1) return a;
  if (parts.length === 3) return 0.3 * a + 0.59 * b + 0.11 * c;
  return parts.length === 4 ? Math.max(0, 1 - 0.3 * a - 0.59 * b - 0.11 * c - black) : 0;
}

/**
 * Reads a page's program (ISO 32000-2, 8 and 9) by its tokens, so that a comment, another spelling of a name or bytes of
 * a picture within it hide nothing. `program` is one character for each byte.
 */
export function readProgram(program: string): Program {
  const drawn: string[] = [];
  const strange = new Set<string>();
  const shown: (readonly [number, number])[] = [];
  const saved: State[] = [];
  let hiddenText = false;
  let coveredText = false;
  let state: State = { matrix: SAME, light: 0, lineWidth: 1, size: 0, mode: 0, clip: EVERYWHERE };
  let [line, text]: [Matrix, Matrix] = [SAME, SAME];
  let path: (readonly [number, number])[] = [];
  let clipping = false;
  let operands: Token[] = [];

  const set = (change: Partial<State>): void => void (state = { ...state, ...change });
  const numbers = (): number[] => operands.flatMap((token) => (token.type === 'number' ? [token.value] : []));
  const matrixOf = ([a = 1, b = 0, c = 0, d = 1, e = 0, f = 0]: readonly number[]): Matrix => [
    a,
    b,
    c,
    d,
    e,
    f,
  ];
  const add = (...points: (readonly [number, number])[]): void => {
    path.push(...points.map(([x, y]) => placed(x, y, state.matrix)));
  };
  const cover = (box: Box): void => {
    const area = both(box, state.clip);
    if (shown.some((point) => within(point, area))) coveredText = true;
  };
  const endPath = (fills: boolean, strokes: boolean): void => {
    const box = boxOf(path);
    if (fills && path.length > 0) cover(box);
    const scale = Math.sqrt(Math.abs(state.matrix[0] * state.matrix[3] - state.matrix[1] * state.matrix[2]));
    const half = (state.lineWidth * scale) / 2;
    if (strokes && path.length > 0 && half * 2 >= COVERING_STROKE)
      cover([box[0] - half, box[1] - half, box[2] + half, box[3] + half]);
    if (clipping) set({ clip: path.length > 0 ? both(state.clip, box) : [0, 0, 0, 0] });
    clipping = false;
    path = [];
  };
  const show = (): void => {
    const matrix = times(text, state.matrix);
    const size = state.size * Math.sqrt(Math.abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]));
    const signs = operands.reduce((sum, token) => sum + (token.type === 'other' ? token.signs : 0), 0);
    // Within each sign, so that a rule under it does not touch it; signs are seldom narrower than this.
    const points = Array.from({ length: Math.max(1, Math.floor(signs)) }, (_, index) =>
      placed((0.15 + NARROW * index) * state.size, 0.3 * state.size, matrix),
    );
    const [point = [0, 0] as const] = points;
    // Rendering modes 3 and 7 paint nothing, 1, 2, 5 and 6 are outlines (9.3.6).
    if (state.mode !== 0 || size < LEAST_SIZE || state.light > MOST_LIGHT || !within(point, state.clip))
      hiddenText = true;
    shown.push(...points);
  };

  const run = (operator: string): void => {
    const n = numbers();
    const [x = 0, y = 0, x2 = 0, y2 = 0, x3 = 0, y3 = 0] = n;
    const [name] = operands.flatMap((token) => (token.type === 'name' ? [token.value] : []));
    if (!usual.has(operator)) strange.add(operator);
    switch (operator) {
      case 'q':
        return void saved.push(state);
      case 'Q':
        return set(saved.pop() ?? {});
      case 'cm':
        return set({ matrix: times(matrixOf(n), state.matrix) });
      case 'w':
        return set({ lineWidth: x });
      case 'Do':
        return void drawn.push(name ?? '');
      case 'BT':
        return void ([line, text] = [SAME, SAME]);
      case 'Tm':
        return void ([line, text] = [matrixOf(n), matrixOf(n)]);
      case 'Td':
      case 'TD':
      case 'T*':
        line = times([1, 0, 0, 1, x, y], line);
        return void (text = line);
      case 'Tf':
        return set({ size: x });
      case 'Tr':
        return set({ mode: x });
      case 'TJ':
      case 'Tj':
        return show();
      case 'g':
      case 'rg':
      case 'k':
      case 'sc':
      case 'scn':
        if (name !== undefined) strange.add('Pattern');
        return set({ light: lightOf(n) });
      case 'SCN':
        if (name !== undefined) strange.add('Pattern');
        return;
      case 'BDC':
      case 'BMC':
        if (name === 'OC') strange.add('OC');
        return;
      case 'm':
      case 'l':
        return add([x, y]);
      case 'v':
      case 'y':
        return add([x, y], [x2, y2]);
      case 'c':
        return add([x, y], [x2, y2], [x3, y3]);
      case 're':
        return add([x, y], [x + x2, y], [x, y + y2], [x + x2, y + y2]);
      case 'W':
      case 'W*':
        return void (clipping = true);
      case 'S':
      case 's':
        return endPath(false, true);
      case 'f':
      case 'F':
      case 'f*':
        return endPath(true, false);
      case 'B':
      case 'B*':
      case 'b':
      case 'b*':
        return endPath(true, true);
      case 'n':
        return endPath(false, false);
    }
  };

  for (const token of tokensOf(program))
    if (token.type === 'operator') {
      run(token.value);
      operands = [];
    } else operands.push(token);
  return { drawn, strange: [...strange].sort(), hiddenText, coveredText };
}

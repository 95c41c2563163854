import type PDFDocument from 'pdfkit';
import { withoutInvisible } from '../../../shared/packet/invisible.ts';
import { faceBytes, faceNames, type FaceName } from '../fonts.ts';

/** How a run of text looks. Sizes and leading in points. */
export interface Style {
  readonly bold: boolean;
  readonly size: number;
  readonly leading: number;
  readonly color: string;
  /** Figures of one width, so that columns of numbers line up. */
  readonly tabular?: boolean;
}

interface Run {
  readonly face: FaceName;
  readonly text: string;
}
export interface Line {
  readonly runs: readonly Run[];
  readonly width: number;
}

/** What pdfkit keeps of a face: enough to ask whether it has a letter. */
interface OpenFace {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

const REPLACEMENT = '?';
/** Characters that stand for ones that no embedded face has. */
const plain: Readonly<Record<string, string>> = {
  '\u2010': '-',
  '\u2011': '-',
  '\u2009': ' ',
  '\u202f': ' ',
  '\u00a0': ' ',
  '\t': ' ',
};

/** Eighths stand in no embedded face; `1⅛` becomes `1 1/8`. */
const eighths: Readonly<Record<string, string>> = { '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8' };
const spelled = (text: string): string =>
  text.replace(/(\d?)([⅛⅜⅝⅞])/g, (_, whole: string, part: string) =>
    whole === '' ? (eighths[part] ?? part) : `${whole} ${eighths[part] ?? part}`,
  );

export interface Typesetter {
  /** Lines no wider than `width` points; a word that is wider is cut where it must be. */
  lines(text: string, style: Style, width: number): Line[];
  /** Signs of a text that no embedded face has: on paper they are question marks. */
  without(text: string): string[];
  /** Draws one line with its baseline at `y`. */
  draw(line: Line, x: number, y: number, style: Style): void;
}

/** Sets text in the embedded faces, character by character in the face that has it. */
export function typesetter(doc: InstanceType<typeof PDFDocument>): Typesetter {
  const open = new Map<FaceName, OpenFace>();
  for (const name of faceNames) {
    doc.registerFont(name, faceBytes(name));
    doc.font(name);
    open.set(name, (doc as unknown as { readonly _font: OpenFace })._font);
  }
  const has = (name: FaceName, sign: string): boolean =>
    open.get(name)?.font.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0) ?? false;

  /** A sign that no face has is drawn as the letters that it stands for: a pasted ligature is two. */
  const signsOf = (text: string, faces: readonly FaceName[]): string[] =>
    Array.from(withoutInvisible(text.normalize('NFC'))).flatMap((given) => {
      const sign = plain[given] ?? given;
      return faces.some((name) => has(name, sign)) ? sign : Array.from(sign.normalize('NFKC'));
    });

  function runsOf(text: string, bold: boolean): Run[] {
    const latin: FaceName = bold ? 'bold' : 'regular';
    const extended: FaceName = bold ? 'boldExtended' : 'regularExtended';
    const runs: { face: FaceName; text: string }[] = [];
    const signs = signsOf(text, [latin, extended]);
    for (const sign of signs) {
      const face = has(latin, sign) ? latin : has(extended, sign) ? extended : null;
      const last = runs.at(-1);
      if (last && last.face === (face ?? latin)) last.text += face === null ? REPLACEMENT : sign;
      else runs.push({ face: face ?? latin, text: face === null ? REPLACEMENT : sign });
    }
    return runs;
  }

  const featuresOf = ({ tabular }: Style): { features: ('kern' | 'tnum')[] } | undefined =>
    tabular ? { features: ['kern', 'tnum'] } : undefined;
  const measured = new Map<string, number>();
  function widthOf(text: string, style: Style): number {
    const key = `${style.bold ? 'b' : 'r'}${style.tabular ? 't' : ''}${style.size} ${text}`;
    const known = measured.get(key);
    if (known !== undefined) return known;
    let width = 0;
    for (const { face, text: part } of runsOf(text, style.bold))
      width += doc.font(face).fontSize(style.size).widthOfString(part, featuresOf(style));
    measured.set(key, width);
    return width;
  }

  /** The longest start of a word that fits, at least one sign. */
  function cutWord(word: string, style: Style, width: number): [string, string] {
    const signs = Array.from(word);
    let fits = 1;
    while (fits < signs.length && widthOf(signs.slice(0, fits + 1).join(''), style) <= width) fits += 1;
    return [signs.slice(0, fits).join(''), signs.slice(fits).join('')];
  }

  const regular: readonly FaceName[] = ['regular', 'regularExtended'];
  return {
    without: (text) => [
      ...new Set(
        signsOf(spelled(text), regular).filter(
          (sign) => sign !== '\n' && !regular.some((name) => has(name, sign)),
        ),
      ),
    ],
    lines(text, style, width) {
      const lines: string[] = [];
      for (const paragraph of spelled(text).split('\n')) {
        let line = '';
        for (const given of paragraph.split(' ').filter((word) => word !== '')) {
          let word = given;
          if (line !== '' && widthOf(`${line} ${word}`, style) > width) {
            lines.push(line);
            line = '';
          }
          while (line === '' && widthOf(word, style) > width && Array.from(word).length > 1) {
            const [start, rest] = cutWord(word, style, width);
            lines.push(start);
            word = rest;
          }
          line = line === '' ? word : `${line} ${word}`;
        }
        lines.push(line);
      }
      return lines.map((line) => ({ runs: runsOf(line, style.bold), width: widthOf(line, style) }));
    },
    draw(line, x, y, style) {
      let at = x;
      for (const { face, text } of line.runs) {
        doc.font(face).fontSize(style.size).fillColor(style.color);
        doc.text(text, at, y, { lineBreak: false, baseline: 'alphabetic', ...featuresOf(style) });
        at += doc.widthOfString(text, featuresOf(style));
      }
    },
  };
}

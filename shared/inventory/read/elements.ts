import { problem } from '../../problems/problem.ts';
import { ImportRefused } from '../refused.ts';
import { longestRecordChars } from './source.ts';

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const OPEN_BRACE = 0x7b;
const CLOSE_BRACE = 0x7d;
const OPEN_BRACKET = 0x5b;
const CLOSE_BRACKET = 0x5d;
const NEWLINE = 0x0a;

/** One element of the list, still as text. */
export interface ElementText {
  readonly text: string;
  readonly line: number;
}

/**
 * Cuts the objects of one list out of a JSON document as it streams by: the list under `key` at the top level, or a
 * top-level list itself. A document of any size is read in the memory of one element; `JSON.parse` still judges every
 * piece, and `frame()` is the rest of the document with the list left empty.
 *
 * A program prefix is passed over (`var hydrants = {…};`), because such files are common.
 */
export class ElementCutter {
  readonly #key: string;
  #started = false;
  #depth = 0;
  #inString = false;
  #escaped = false;
  #line = 1;
  /** Depth inside the list, or 0 while outside it. */
  #listDepth = 0;
  #listSeen = false;
  #frame = '';
  #element = '';
  #elementLine = 0;
  #done = false;

  constructor(key: string) {
    this.#key = key;
  }

  push(text: string): ElementText[] {
    const found: ElementText[] = [];
    let position = this.#started ? 0 : this.#begin(text);
    let from = position;
    for (; position < text.length && !this.#done; position += 1) {
      const char = text.charCodeAt(position);
      if (char === NEWLINE) this.#line += 1;
      if (this.#inString) {
        if (this.#escaped) this.#escaped = false;
        else if (char === BACKSLASH) this.#escaped = true;
        else if (char === QUOTE) this.#inString = false;
        continue;
      }
      if (char === QUOTE) {
        this.#inString = true;
      } else if (char === OPEN_BRACE || char === OPEN_BRACKET) {
        this.#depth += 1;
        if (this.#listDepth > 0 && this.#depth === this.#listDepth + 1) {
          this.#keep(text.slice(from, position), false);
          from = position;
          this.#element = '';
          this.#elementLine = this.#line;
        } else if (char === OPEN_BRACKET && !this.#listSeen && this.#opensList(text.slice(from, position))) {
          this.#keep(text.slice(from, position + 1), true);
          from = position + 1;
          this.#listDepth = this.#depth;
          this.#listSeen = true;
        }
      } else if (char === CLOSE_BRACE || char === CLOSE_BRACKET) {
        this.#depth -= 1;
        if (this.#listDepth > 0 && this.#depth === this.#listDepth) {
          found.push({ text: this.#element + text.slice(from, position + 1), line: this.#elementLine });
          this.#element = '';
          from = position + 1;
        } else if (this.#listDepth > 0 && this.#depth < this.#listDepth) {
          this.#keep(text.slice(from, position), false);
          from = position;
          this.#listDepth = 0;
        }
        if (this.#depth === 0) {
          this.#frame += text.slice(from, position + 1);
          from = position + 1;
          this.#done = true;
        }
      }
    }
    if (!this.#done) this.#carry(text.slice(from));
    return found;
  }

  /**
   * The document around the list, parsed.
   *
   * @throws ImportRefused when the document ends early or is not JSON, with the line where reading stopped.
   */
  frame(): unknown {
    if (!this.#done) throw new ImportRefused(problem('inventory-json-cut-off', '', { line: this.#line }));
    try {
      return JSON.parse(this.#frame) as unknown;
    } catch (cause) {
      throw new ImportRefused(
        problem('inventory-not-json', '', { line: this.#line, detail: (cause as Error).message }),
      );
    }
  }

  get foundList(): boolean {
    return this.#listSeen;
  }

  /** Where the document itself begins, behind a program prefix. */
  #begin(text: string): number {
    const start = text.search(/[[{]/);
    if (start < 0) {
      if (text.length > 1000) throw new ImportRefused(problem('inventory-format-unknown'));
      return text.length;
    }
    this.#started = true;
    for (const char of text.slice(0, start)) if (char === '\n') this.#line += 1;
    return start;
  }

  #opensList(before: string): boolean {
    if (this.#depth === 1) return (this.#frame + before).trim() === '';
    return (
      this.#depth === 2 &&
      new RegExp(`"${this.#key}"\\s*:\\s*$`).test(this.#frame.slice(-200) + before.slice(-200))
    );
  }

  /** Between the list's elements only commas and space may stand, and they are not part of the frame. */
  #keep(text: string, frame: boolean): void {
    if (frame || this.#listDepth === 0) this.#frame += text;
    else if (/[^\s,]/.test(text))
      throw new ImportRefused(
        problem('inventory-not-json', '', { line: this.#line, detail: text.trim().slice(0, 40) }),
      );
  }

  #carry(text: string): void {
    if (this.#listDepth > 0 && this.#depth > this.#listDepth) this.#element += text;
    else if (this.#started) this.#keep(text, false);
    if (this.#element.length > longestRecordChars || this.#frame.length > longestRecordChars) {
      throw new ImportRefused(
        problem('inventory-record-never-closed', '', { line: this.#elementLine || this.#line }),
      );
    }
  }
}

import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename } from 'node:path';
import { collectGarbage } from './memory.ts';
import type { ImportFile } from '../../../shared/inventory/importFile.ts';
import { sniffFormat } from '../../../shared/inventory/read/format.ts';
import { ImportRefused } from '../../../shared/inventory/refused.ts';
import { problem, type Problem } from '../../../shared/problems/problem.ts';

type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';

// Small enough that the rows of one piece are garbage before the collector counts them among what stays.
const chunkBytes = 1 << 16;
const collectEveryBytes = 1 << 24;
/** Enough to see fifty lines of a wide table, from which the delimiter is found. */
const headChars = 65_536;

export interface OpenedFile extends ImportFile {
  /** SHA-256 of the bytes as they lie on the disk, in lower-case hexadecimal. */
  readonly sha256: string;
}

/**
 * Opens a file for import: its hash, its encoding, its format. The bytes are read once here and streamed again for each
 * pass, so memory does not grow with the file.
 *
 * @throws ImportRefused when there is no such file, or it is of no format that is read
 */
export async function openFile(path: string): Promise<OpenedFile> {
  const readable = await stat(path).then(
    (found) => found.isFile(),
    () => false,
  );
  if (!readable) throw new ImportRefused(problem('inventory-file-not-found', '', { file: path }));
  const { sha256, encoding } = await examine(path);
  const text = (): AsyncIterable<string> => decoded(path, encoding);
  let head = '';
  for await (const piece of text()) {
    head += piece;
    if (head.length >= headChars) break;
  }
  const format = sniffFormat(head.slice(0, headChars));
  const remarks = encoding === 'windows-1252' ? [await encodingRemark(text())] : [];
  return { name: basename(path), format, head: head.slice(0, headChars), text, remarks, sha256 };
}

async function examine(path: string): Promise<{ sha256: string; encoding: Encoding }> {
  const hash = createHash('sha256');
  // Fatal: it throws at the first byte that is not UTF-8, which is how the encoding is known.
  const strict = new TextDecoder('utf-8', { fatal: true });
  let encoding: Encoding | null = null;
  let first = true;
  for await (const chunk of bytesOf(path)) {
    hash.update(chunk);
    if (first && chunk[0] === 0xff && chunk[1] === 0xfe) encoding = 'utf-16le';
    if (first && chunk[0] === 0xfe && chunk[1] === 0xff) encoding = 'utf-16be';
    first = false;
    if (encoding === null && !isUtf8(strict, chunk)) encoding = 'windows-1252';
  }
  if (encoding === null && !isUtf8(strict)) encoding = 'windows-1252';
  return { sha256: hash.digest('hex'), encoding: encoding ?? 'utf-8' };
}

function isUtf8(strict: TextDecoder, chunk?: Uint8Array): boolean {
  try {
    strict.decode(chunk, { stream: chunk !== undefined });
    return true;
  } catch {
    return false;
  }
}

async function* bytesOf(path: string): AsyncGenerator<Uint8Array> {
  const stream = createReadStream(path, { highWaterMark: chunkBytes });
  for await (const chunk of stream) yield chunk as Uint8Array;
}

/** The text in pieces; a byte-order mark is dropped by the decoder. */
async function* decoded(path: string, encoding: Encoding): AsyncGenerator<string> {
  const decoder = new TextDecoder(encoding);
  let uncollected = 0;
  for await (const chunk of bytesOf(path)) {
    uncollected += chunk.length;
    if (uncollected > collectEveryBytes) {
      collectGarbage();
      uncollected = 0;
    }
    const text = decoder.decode(chunk, { stream: true });
    if (text !== '') yield text;
  }
  const rest = decoder.decode();
  if (rest !== '') yield rest;
  // What the reader made of the text is kept by now; the text itself need not be.
  collectGarbage();
}

async function encodingRemark(pieces: AsyncIterable<string>): Promise<Problem> {
  for await (const text of pieces) {
    const word = /[\p{L}\d]*[\u0080-\u024f][\p{L}\d]*/u.exec(text)?.[0];
    if (word) return problem('inventory-not-utf8', '', { example: word });
  }
  return problem('inventory-not-utf8', '', { example: '?' });
}

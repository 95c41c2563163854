import PDFDocument from 'pdfkit';
import { typesetter, type Typesetter } from './typeset.ts';

let type: Typesetter | null = null;

/** Signs of a text that the embedded faces (Latin) do not have: emoji, other scripts. Nothing is drawn. */
export function unprintable(text: string): string[] {
  // The faces are read once; no page is made.
  type ??= typesetter(new PDFDocument({ autoFirstPage: false, font: '' }));
  return type.without(text);
}

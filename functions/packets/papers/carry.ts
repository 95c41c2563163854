import {
  PDFArray,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFRawStream,
  PDFRef,
  PDFStream,
  PDFString,
  type PDFContext,
  type PDFObject,
} from '@cantoo/pdf-lib';

/**
 * What never comes along from another's file, wherever in it it stands: actions and scripts, forms, files in files, and
 * what leads out of the page's own pictures and letters into the rest of the document.
 */
const LEFT_BEHIND = new Set(
  [
    ['A', 'AA', 'OpenAction', 'JS', 'JavaScript', 'URI', 'Launch', 'GoToR', 'GoToE', 'SubmitForm', 'Next'],
    ['AcroForm', 'XFA', 'Annots', 'Parent', 'Kids', 'Pages', 'Popup', 'Dest', 'Dests', 'Names', 'P'],
    ['EF', 'AF', 'EmbeddedFiles', 'Filespec', 'F', 'FFilter', 'FDecodeParms', 'RichMediaContent'],
    ['Metadata', 'PieceInfo', 'LastModified', 'OPI', 'Ref', 'Alternates', 'StructParent', 'StructParents'],
  ].flat(),
);
/** Lists in which a page gives its letters, pictures and the like names of its own, which mean nothing beyond it. */
const OWN_NAMES = new Set([
  'Font',
  'XObject',
  'ExtGState',
  'ColorSpace',
  'Pattern',
  'Shading',
  'Properties',
  'CharProcs',
  'Colorants',
]);

const MOST_OBJECTS = 50_000;
const MOST_DEPTH = 60;

/** Copies pictures, letters and the like into another document, without `LEFT_BEHIND`. Throws on what is too deep. */
export class Carrier {
  private readonly known = new Map<PDFRef, PDFRef>();
  private count = 0;
  private readonly from: PDFContext;
  private readonly to: PDFContext;

  constructor(from: PDFContext, to: PDFContext) {
    this.from = from;
    this.to = to;
  }

  carry(object: PDFObject, depth = 0, ownNames = false): PDFObject {
    this.count += 1;
    if (depth > MOST_DEPTH || this.count > MOST_OBJECTS * 20) throw new Error('nested too deep');
    if (object instanceof PDFRef) return this.carryRef(object, depth, ownNames);
    if (object instanceof PDFStream)
      return PDFRawStream.of(this.carryDict(object.dict, depth, { stream: true }), object.getContents());
    if (object instanceof PDFDict) return this.carryDict(object, depth, { ownNames });
    if (object instanceof PDFArray) {
      const copy = PDFArray.withContext(this.to);
      for (const item of object.asArray()) copy.push(this.carry(item, depth + 1));
      return copy;
    }
    return object.clone(this.to);
  }

  private carryRef(ref: PDFRef, depth: number, ownNames: boolean): PDFRef {
    const known = this.known.get(ref);
    if (known) return known;
    if (this.known.size > MOST_OBJECTS) throw new Error('too many objects');
    const copy = this.to.nextRef();
    this.known.set(ref, copy);
    const object = this.from.lookup(ref);
    // A page or the catalogue is never part of a picture: what points there is a trap or a mistake.
    const type = object instanceof PDFDict ? object.get(PDFName.of('Type'))?.toString() : undefined;
    if (object && type !== '/Page' && type !== '/Pages' && type !== '/Catalog')
      this.to.assign(copy, this.carry(object, depth + 1, ownNames));
    else this.to.assign(copy, PDFDict.withContext(this.to));
    return copy;
  }

  private carryDict(
    dict: PDFDict,
    depth: number,
    { stream = false, ownNames = false }: { readonly stream?: boolean; readonly ownNames?: boolean },
  ): PDFDict {
    const copy = PDFDict.withContext(this.to);
    for (const [key, value] of dict.entries()) {
      const name = key.decodeText();
      // Words under a name of a page's own are nothing that a page could show.
      if (ownNames ? value instanceof PDFString || value instanceof PDFHexString : LEFT_BEHIND.has(name))
        continue;
      // Its true length is written anew.
      if (stream && name === 'Length') continue;
      copy.set(PDFName.of(name), this.carry(value, depth + 1, !ownNames && OWN_NAMES.has(name)));
    }
    return copy;
  }
}

import type { Role } from '../roles.ts';
import type { Exhibit } from '../submissions/fields.ts';
import { formOf, type Submission } from '../submissions/submission.ts';

/** Where a body lists its exhibits; whatever sends or keeps their bytes reads all of these. */
export const exhibitLists = ['photos', 'documents', 'exhibits'] as const;

/**
 * The exhibits that a submission declares by hash. A correction declares those of its replacement, because the bytes
 * of a photo it adds must have a way in too. A withdrawn fact still declared what it declared.
 */
export function declaredExhibits(submission: Submission): readonly Exhibit[] {
  const body = submission.kind === 'correction' ? submission.body.replacement : submission.body;
  if (body === null) return [];
  // The form has checked the body, so a list of any of these names is one of exhibits.
  return exhibitLists.flatMap((name) => {
    const list: unknown = (body as Readonly<Record<string, unknown>>)[name];
    return Array.isArray(list) ? (list as readonly Exhibit[]) : [];
  });
}

/** A document that a submission names by hash: what it is, and who may read the submission and so the document. */
export interface NamedDocument {
  readonly sha256: string;
  readonly mediaType: Exhibit['mediaType'] | 'application/zip';
  readonly readers: readonly Role[];
}

/** A document as it is kept: when it was first named, by the server's clock. Kept ones of before do not say. */
export interface ListedDocument extends NamedDocument {
  readonly declaredAt?: string;
}

/** Every document that a submission names: its photos and papers, and the letter, packet and archive that the server made. */
export function namedDocuments(submission: Submission): readonly NamedDocument[] {
  const { readers } = formOf(submission);
  const photos = declaredExhibits(submission).map(({ sha256, mediaType }) => ({
    sha256,
    mediaType,
    readers,
  }));
  if (submission.kind === 'letter-sent')
    return [...photos, { sha256: submission.body.pdfSha256, mediaType: 'application/pdf', readers }];
  if (submission.kind !== 'packet-frozen') return photos;
  const { pdfSha256, archiveSha256 } = submission.body;
  return [
    ...photos,
    { sha256: pdfSha256, mediaType: 'application/pdf', readers },
    ...(archiveSha256 === undefined
      ? []
      : [{ sha256: archiveSha256, mediaType: 'application/zip' as const, readers }]),
  ];
}

/** File endings by media type, for the name under which a document is saved. */
export const fileEndings: Readonly<Record<NamedDocument['mediaType'], string>> = {
  'application/zip': 'zip',
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/heic': 'heic',
  'image/heif': 'heif',
  'image/webp': 'webp',
  'application/pdf': 'pdf',
};

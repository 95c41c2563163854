import type { IncomingMessage } from 'node:http';
import { answer, type Answer } from './answer.ts';
import { answerFile, filesFor, readBelow, type Served } from './staticFiles.ts';

/** What the publisher has put out, by key. */
export interface PublishedFiles {
  read(key: string): Promise<Served | null>;
}

export interface Pages {
  /** Folder of the built site's browser files: crew's forms, claims desk, assets. */
  readonly client: string | null;
  readonly published: PublishedFiles;
}

/** Answers for everything that is neither the API nor the runner's own: the built site first, then what is published. */
export async function answerPage(
  request: IncomingMessage,
  pathname: string,
  { client, published }: Pages,
): Promise<Answer> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, { allow: 'GET, HEAD' });
  for (const name of filesFor(pathname)) {
    const served = (client === null ? null : await readBelow(client, name)) ?? (await published.read(name));
    if (served) return answerFile(request, served);
  }
  const notFound = await published.read('404.html');
  return notFound
    ? answerFile(request, notFound, 404)
    : answer(404, { 'content-type': 'text/plain; charset=utf-8' }, 'Not found');
}

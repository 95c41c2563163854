import type { IncomingMessage } from 'node:http';
import { feedHeaders, feedsPath, preflightHeaders } from '../../shared/feeds/cors.ts';
import { answer, withStreets, type Answer } from './answer.ts';
import { answerFile, filesFor, readBelow, type Served } from './staticFiles.ts';

/** What the publisher has put out, by key. */
export interface PublishedFiles {
  read(key: string): Promise<Served | null>;
}

export interface Pages {
  /** Folder of the built site's browser files: crew's forms, claims desk, assets. */
  readonly client: string | null;
  readonly published: PublishedFiles;
  /** The origin of the map's streets; null: the map has none. */
  readonly streets?: string | null;
}

/**
 * Answers for everything that is neither the API nor the runner's own: the built site first, then what is published. What
 * stands below `/v1/` may be read by pages of other sites as well, as on AWS (`infra/aws/service/publicFeeds.ts`).
 */
export async function answerPage(request: IncomingMessage, pathname: string, pages: Pages): Promise<Answer> {
  if (!pathname.startsWith(feedsPath)) return answerFrom(request, pathname, pages);
  if (request.method === 'OPTIONS') return answer(204, preflightHeaders);
  const found = await answerFrom(request, pathname, pages);
  return { ...found, headers: { ...found.headers, ...feedHeaders } };
}

async function answerFrom(
  request: IncomingMessage,
  pathname: string,
  { client, published, streets = null }: Pages,
): Promise<Answer> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return answer(405, { allow: 'GET, HEAD' });
  for (const name of filesFor(pathname)) {
    const served = (client === null ? null : await readBelow(client, name)) ?? (await published.read(name));
    if (!served) continue;
    const file = answerFile(request, served);
    return { ...file, headers: { ...file.headers, ...withStreets(streets) } };
  }
  const notFound = await published.read('404.html');
  return notFound
    ? answerFile(request, notFound, 404)
    : answer(404, { 'content-type': 'text/plain; charset=utf-8' }, 'Not found');
}

import * as z from 'zod';
import { createDocument, type ZodOpenApiPathItemObject, type ZodOpenApiResponseObject } from 'zod-openapi';
import { publicSnapshot, type PublicSnapshot } from '../public/snapshot.ts';
import { say } from '../words/index.ts';
import { titleOf } from './atom.ts';
import { addressOf, feedsOf, INDEX_KEY, type Feed, type FeedName } from './catalogue.ts';
import { feedChanges } from './changes.ts';
import { outOfServiceGeoJson } from './geojson.ts';
import { feedIndex } from './indexDocument.ts';
import { outOfServiceJsonFeed } from './jsonFeed.ts';

/** What a program may take for granted of a JSON feed; the others follow the standard that their type names. */
const schemas: Partial<Record<FeedName, z.ZodType>> = {
  snapshot: publicSnapshot.safeExtend({ note: z.string() }).meta({ id: 'Snapshot' }),
  geojson: outOfServiceGeoJson.meta({ id: 'OutOfService' }),
  changes: feedChanges.meta({ id: 'Changes' }),
  openapi: z.looseObject({ openapi: z.string() }),
  jsonFeed: outOfServiceJsonFeed.meta({ id: 'NewsFeed' }),
};

const headers = {
  ETag: {
    description: 'Changes with the content; send it back as If-None-Match.',
    schema: { type: 'string' },
  },
  'Last-Modified': { description: 'The check, to the second.', schema: { type: 'string' } },
  'Cache-Control': { description: 'For how many seconds a copy may be kept.', schema: { type: 'string' } },
  'Access-Control-Allow-Origin': { description: '*', schema: { type: 'string' } },
} as const satisfies ZodOpenApiResponseObject['headers'];

const pathOf = (key: string, summary: string, type: string, schema: z.ZodType): ZodOpenApiPathItemObject => ({
  get: {
    operationId: key.replaceAll(/[^a-z0-9]+(.)/gi, (_, next: string) => next.toUpperCase()),
    summary,
    security: [],
    responses: {
      200: { description: summary, headers, content: { [type]: { schema } } },
      304: { description: 'The copy whose ETag was sent is current.' },
      404: {
        description: 'Nothing has been published yet.',
        content: { 'text/html': { schema: z.string() } },
      },
    },
  },
});

const pathOfFeed = ({ key, name, type, locale }: Feed, own: PublicSnapshot['utility']['locale']) =>
  [
    `/${key}`,
    pathOf(key, say(locale ?? own, `feeds.name.${name}`), type, schemas[name] ?? z.string()),
  ] as const;

/**
 * The read API, which is the published files, described in OpenAPI 3.1 from the schemas that they are checked with before
 * they leave. Nothing in it needs a key, an account or a query.
 */
export function openApiDocument(
  { utility }: Pick<PublicSnapshot, 'utility'>,
  { publicUrl, alerts }: { readonly publicUrl: string | null; readonly alerts: boolean },
): object {
  const { locale, license } = utility;
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: titleOf({ utility }, locale),
      version: '1.0.0',
      description: say(locale, 'feeds.api.description'),
      ...(license ? { license: { name: license.name, url: license.url } } : {}),
    },
    servers: [{ url: publicUrl === null ? '/' : addressOf('', publicUrl) }],
    paths: Object.fromEntries([
      [
        `/${INDEX_KEY}`,
        pathOf(
          INDEX_KEY,
          say(locale, 'feeds.name.index'),
          'application/json',
          feedIndex.meta({ id: 'Index' }),
        ),
      ],
      ...feedsOf({ alerts }).map((feed) => pathOfFeed(feed, locale)),
    ]),
  });
}

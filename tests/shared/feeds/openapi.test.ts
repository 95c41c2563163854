import { Validator } from '@seriousme/openapi-schema-validator';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { feedsOf } from '../../../shared/feeds/catalogue.ts';
import { geoJsonFeed } from '../../../shared/feeds/geojson.ts';
import { indexDocument } from '../../../shared/feeds/indexDocument.ts';
import { jsonFeed } from '../../../shared/feeds/jsonFeed.ts';
import { openApiDocument } from '../../../shared/feeds/openapi.ts';
import { nextChanges } from '../../../shared/feeds/changes.ts';
import { editionOf } from '../../support/feeds.ts';
import { townSources } from '../../support/town.ts';

const edition = editionOf(townSources());
const { snapshot } = edition;
const changes = nextChanges(null, edition);
const offered = { publicUrl: 'https://hydrants.example/', alerts: true };
const document = openApiDocument(snapshot, offered) as {
  paths: Record<
    string,
    { get: { operationId: string; responses: { 200: { content: Record<string, { schema: object }> } } } }
  >;
  components: { schemas: Record<string, object> };
};

/** What the document says of one address, as a schema that a general validator can use. */
function promised(path: string, type: string) {
  // `strict` would refuse the document's own words beside the schemas, which are no fault of theirs.
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  ajv.addSchema(document, 'openapi');
  const pointer = ['paths', path, 'get', 'responses', '200', 'content', type, 'schema']
    .map((part) => encodeURIComponent(part.replaceAll('~', '~0').replaceAll('/', '~1')))
    .join('/');
  return ajv.compile({ $ref: `openapi#/${pointer}` });
}

describe('the description of the read API (OpenAPI 3.1)', () => {
  it.each([offered, { publicUrl: null, alerts: false }])(
    'is valid by the standard’s schema: %j',
    async (which) => {
      const validator = new Validator();
      const result = await validator.validate(
        JSON.parse(JSON.stringify(openApiDocument(snapshot, which))) as Record<string, unknown>,
      );
      expect(result.errors).toBeUndefined();
      expect(result.valid).toBe(true);
      expect(validator.version).toBe('3.1');
    },
  );

  it('names every feed once, each operation by a name of its own', () => {
    const paths = [...feedsOf({ alerts: true }).map(({ key }) => `/${key}`), '/v1/index.json'];
    expect(Object.keys(document.paths).toSorted()).toEqual(paths.toSorted());
    const names = Object.values(document.paths).map(({ get }) => get.operationId);
    expect(new Set(names).size).toBe(names.length);
  });

  it.each([
    ['/v1/out-of-service.geojson', 'application/geo+json', geoJsonFeed(snapshot)],
    ['/v1/snapshot.json', 'application/json', { note: 'x', ...snapshot }],
    ['/v1/changes.json', 'application/json', changes],
    ['/v1/index.json', 'application/json', indexDocument(snapshot, offered)],
    [
      '/v1/es/out-of-service.feed.json',
      'application/feed+json',
      jsonFeed({ edition, changes, locale: 'es', publicUrl: offered.publicUrl }),
    ],
  ])('%s keeps to what it promises', (path, type, content) => {
    const keeps = promised(path, type);
    const plain = JSON.parse(JSON.stringify(content)) as Record<string, unknown>;
    expect(keeps(plain), JSON.stringify(keeps.errors)).toBe(true);
    // And the promise is one: without what every feed has, or with what none may have, it is broken.
    expect(keeps({ ...plain, driver: 'x' })).toBe(false);
    expect(keeps({})).toBe(false);
  });
});

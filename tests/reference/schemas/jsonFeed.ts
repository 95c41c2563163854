/**
 * JSON Feed 1.1 as a JSON Schema, written for these tests; the format publishes none. Compared on 2026-11-26 with the
 * format's text (jsonfeed.org/version/1.1, stored copy of its repository), member by member. Names that begin with an
 * underscore and a letter are anybody's, and an extension is an object without a point in its names.
 */
const url = { type: 'string', format: 'uri' };
const author = {
  type: 'object',
  minProperties: 1,
  properties: { name: { type: 'string' }, url, avatar: url },
  additionalProperties: false,
};
const extension = { '^_[a-zA-Z][^.]*$': { type: 'object', propertyNames: { pattern: '^[^._][^.]*$' } } };

export const jsonFeedSchema = {
  type: 'object',
  required: ['version', 'title', 'items'],
  properties: {
    version: { const: 'https://jsonfeed.org/version/1.1' },
    title: { type: 'string' },
    home_page_url: url,
    feed_url: url,
    description: { type: 'string' },
    user_comment: { type: 'string' },
    next_url: url,
    icon: url,
    favicon: url,
    authors: { type: 'array', items: author },
    language: { type: 'string', pattern: '^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$' },
    expired: { type: 'boolean' },
    hubs: { type: 'array', items: { type: 'object', required: ['type', 'url'] } },
    items: {
      type: 'array',
      items: {
        type: 'object',
        required: ['id'],
        anyOf: [{ required: ['content_text'] }, { required: ['content_html'] }],
        properties: {
          id: { type: 'string', minLength: 1 },
          url,
          external_url: url,
          title: { type: 'string' },
          content_html: { type: 'string' },
          content_text: { type: 'string' },
          summary: { type: 'string' },
          image: url,
          banner_image: url,
          date_published: { type: 'string', format: 'date-time' },
          date_modified: { type: 'string', format: 'date-time' },
          authors: { type: 'array', items: author },
          tags: { type: 'array', items: { type: 'string' } },
          language: { type: 'string' },
          attachments: { type: 'array', items: { type: 'object', required: ['url', 'mime_type'] } },
        },
        patternProperties: extension,
        additionalProperties: false,
      },
    },
  },
  patternProperties: extension,
  additionalProperties: false,
} as const;

import { feedVersion } from './catalogue.ts';

/** Below this stand the feeds, and nothing that anybody has to sign in for. */
export const feedsPath = `/${feedVersion}/`;

/**
 * What a browser is told about the feeds (the Fetch standard's CORS protocol): any page may read them, with no cookie
 * and no name, and may ask with a tag of its own whether its copy is current. Nothing else of the site answers so.
 */
export const feedCors = {
  methods: ['GET', 'HEAD', 'OPTIONS'],
  requestHeaders: ['If-None-Match', 'If-Modified-Since'],
  /** What a script may see of an answer, beside what it always may. */
  exposed: ['ETag'],
  /** For how long a browser need not ask again, seconds. */
  maxAgeSeconds: 86_400,
} as const;

/** The same as headers, for an answer to GET or HEAD. */
export const feedHeaders: Readonly<Record<string, string>> = {
  'access-control-allow-origin': '*',
  'access-control-expose-headers': feedCors.exposed.join(', '),
};

/** For the question that a browser asks first. */
export const preflightHeaders: Readonly<Record<string, string>> = {
  ...feedHeaders,
  'access-control-allow-methods': feedCors.methods.join(', '),
  'access-control-allow-headers': feedCors.requestHeaders.join(', '),
  'access-control-max-age': String(feedCors.maxAgeSeconds),
};

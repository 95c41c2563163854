import { lambdaHandler } from '../http/lambda.ts';
import { openPublishedStore } from '../stores/published/openPublished.ts';
import { environment, httpDeps, tables } from '../wiring.ts';
import { createHealthApp } from './app.ts';

export const handler = lambdaHandler(() => {
  const { publishedUrl, utility: settings } = environment();
  return createHealthApp({
    ...httpDeps(),
    ...tables(),
    published: openPublishedStore(publishedUrl),
    settings,
  });
});

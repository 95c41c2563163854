import * as z from 'zod';
import type { PublicSnapshot } from '../public/snapshot.ts';
import { locales, say } from '../words/index.ts';
import { addressOf, feedsOf, feedVersion } from './catalogue.ts';
import { checkedFacts, checkedFactsOf } from './facts.ts';

export const feedIndex = z.strictObject({
  /** That of the path; what would break a reader becomes another. */
  version: z.literal(feedVersion),
  ...checkedFacts.shape,
  feeds: z.array(
    z.strictObject({
      /** Whole, or from the site's root while the site's own address is not known. */
      href: z.string(),
      type: z.string(),
      title: z.string(),
      /** Null: it speaks in codes and figures. */
      language: z.enum(locales).nullable(),
    }),
  ),
});
export type FeedIndex = z.infer<typeof feedIndex>;

/** What feeds there are, by address, media type and language. @throws ZodError when something does not fit the schema. */
export function indexDocument(
  snapshot: PublicSnapshot,
  { publicUrl, alerts }: { readonly publicUrl: string | null; readonly alerts: boolean },
): FeedIndex {
  const own = snapshot.utility.locale;
  return feedIndex.parse({
    version: feedVersion,
    ...checkedFactsOf(snapshot, own),
    feeds: feedsOf({ alerts }).map(({ name, type, locale, key }) => ({
      href: addressOf(key, publicUrl),
      type,
      title: say(locale ?? own, `feeds.name.${name}`),
      language: locale,
    })),
  });
}

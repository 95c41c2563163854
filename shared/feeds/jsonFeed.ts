import * as z from 'zod';
import { pagePath } from '../public/address.ts';
import { publicOutage } from '../public/snapshot.ts';
import { locales } from '../words/index.ts';
import { entriesOf, titleOf, type NewsQuestion } from './atom.ts';
import { addressOf, feedKey } from './catalogue.ts';
import { outageChange, type OutageChange } from './changes.ts';
import { aboutWords, checkedFacts, checkedFactsOf } from './facts.ts';
import { outageUri } from './ids.ts';
import { outageLines, pathOf, titleWords } from './outageWords.ts';

const { hydrantId, inInventory, place, position, ended } = outageChange.shape;
const { cause, since, expectedAt, waitingFor, stage } = publicOutage.shape;

const item = z.strictObject({
  id: z.string().min(1),
  url: z.url().optional(),
  title: z.string(),
  content_text: z.string(),
  /** The check that first listed it, and the one at which what is said of it last changed. */
  date_published: z.iso.datetime(),
  date_modified: z.iso.datetime(),
  tags: z.array(z.string()),
  /** The same in codes. Names that begin with an underscore are the format's place for what it does not have. */
  _hydrant: z.strictObject({
    hydrantId,
    inInventory,
    place,
    position,
    cause,
    since,
    expectedAt,
    waitingFor,
    stage,
    ended,
  }),
});

export const outOfServiceJsonFeed = z.strictObject({
  version: z.literal('https://jsonfeed.org/version/1.1'),
  title: z.string(),
  home_page_url: z.url().optional(),
  feed_url: z.url().optional(),
  description: z.string(),
  authors: z.array(z.strictObject({ name: z.string() })),
  language: z.enum(locales),
  _checked: checkedFacts,
  items: z.array(item),
});
export type OutOfServiceJsonFeed = z.infer<typeof outOfServiceJsonFeed>;

/**
 * News of outages as a JSON Feed (version 1.1, `application/feed+json`): the entries of the Atom feed under the same
 * ids, and what programs need of them in codes under `_hydrant`. The time of the check is in `description` for people and
 * in `_checked` for programs.
 *
 * @throws ZodError when something does not fit the schema.
 */
export function jsonFeed(question: NewsQuestion): OutOfServiceJsonFeed {
  const { edition, changes, locale, publicUrl } = question;
  const { utility } = edition.snapshot;
  const facts = checkedFactsOf(edition.snapshot, locale);
  // The format wants whole addresses; where the site stands is not known yet, they are left out.
  const address = <K extends string>(name: K, path: string): Partial<Record<K, string>> =>
    publicUrl === null ? {} : ({ [name]: addressOf(path, publicUrl) } as Record<K, string>);
  return outOfServiceJsonFeed.parse({
    version: 'https://jsonfeed.org/version/1.1',
    title: titleOf(edition.snapshot, locale),
    ...address('home_page_url', pagePath('', locale, utility.locale).slice(1)),
    ...address('feed_url', feedKey('jsonFeed', locale)),
    description: aboutWords(edition.snapshot, locale),
    authors: [{ name: utility.name }],
    language: locale,
    _checked: facts,
    items: entriesOf(changes).map((change) => ({
      ...itemOf(change, question),
      ...address('url', pathOf(change, edition, locale).slice(1)),
    })),
  });
}

function itemOf(change: OutageChange, { edition, locale }: NewsQuestion): object {
  const { outage, listedAt, changedAt, version: _version, ...hydrant } = change;
  const { outageId, heldBy: _heldBy, ...codes } = outage;
  return {
    id: outageUri(outageId),
    title: titleWords(change, locale),
    content_text: outageLines(change, edition.snapshot, locale).join('\n'),
    date_published: listedAt,
    date_modified: changedAt,
    tags: [hydrant.ended === null ? 'out-of-service' : 'over', outage.cause],
    _hydrant: { ...hydrant, ...codes },
  };
}

import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { parseAtomFeed, parseJsonFeed } from 'feedsmith';
import { describe, expect, it } from 'vitest';
import { atomFeed, MOST_ENTRIES, type NewsQuestion } from '../../../shared/feeds/atom.ts';
import { nextChanges, type FeedChanges } from '../../../shared/feeds/changes.ts';
import { jsonFeed } from '../../../shared/feeds/jsonFeed.ts';
import { anOutage, aStatus, townSources } from '../../support/town.ts';
import {
  at,
  changesAfter,
  editionOf,
  noneOut,
  oneOut,
  overAt,
  street,
  streetHydrants,
  twoReasons,
  uuids,
  type Check,
} from '../../support/feeds.ts';
import { jsonFeedSchema } from '../../reference/schemas/jsonFeed.ts';
import { xmlFaults } from '../../support/xmllint.ts';

function question(checks: readonly Check[], more: Partial<NewsQuestion> = {}): NewsQuestion {
  const [minutes, sources] = checks.at(-1) ?? [0, noneOut];
  return {
    edition: editionOf(sources, minutes),
    changes: changesAfter(...checks),
    locale: 'en',
    publicUrl: 'https://hydrants.example/',
    ...more,
  };
}
const cases: readonly [string, NewsQuestion][] = [
  ['one out', question([[0, oneOut]])],
  ['none out', question([[0, noneOut]])],
  ['two reasons, and signs that XML escapes', question([[0, twoReasons]])],
  [
    'one over',
    question([
      [0, oneOut],
      [5, overAt(at(4))],
    ]),
  ],
  ['no inventory', question([[0, { ...oneOut, inventory: null }]])],
  ['no address of its own', question([[0, oneOut]], { publicUrl: null })],
  ['in Spanish', question([[0, twoReasons]], { locale: 'es' })],
];

const ajv = new Ajv({ strict: false });
addFormats.default(ajv);
const validJsonFeed = ajv.compile(jsonFeedSchema);
/** An Atom feed as a feed reader has it, its texts as bare words. */
function read(text: string) {
  const { title, subtitle, rights, entries = [], ...feed } = parseAtomFeed(text);
  return {
    ...feed,
    title: title?.value,
    subtitle: subtitle?.value,
    rights: rights?.value,
    entries: entries.map((entry) => ({ ...entry, title: entry.title?.value, content: entry.content?.value })),
  };
}

describe('the schemas by which the feeds are checked', () => {
  /** RFC 4287 §1.1, the brief example. */
  const example = `<?xml version="1.0" encoding="utf-8"?>
   <feed xmlns="http://www.w3.org/2005/Atom">
     <title>Example Feed</title>
     <link href="http://example.org/"/>
     <updated>2003-12-13T18:30:02Z</updated>
     <author><name>John Doe</name></author>
     <id>urn:uuid:60a76c80-d399-11d9-b93C-0003939e0af6</id>
     <entry>
       <title>Atom-Powered Robots Run Amok</title>
       <link href="http://example.org/2003/12/13/atom03"/>
       <id>urn:uuid:1225c695-cfb8-4ebb-aaaa-80da344efa6a</id>
       <updated>2003-12-13T18:30:02Z</updated>
       <summary>Some text.</summary>
     </entry>
   </feed>`;

  it('pass the standard’s own example and refuse what it forbids', async () => {
    expect(await xmlFaults(example, 'atom.rng')).toEqual([]);
    for (const [what, with_] of [
      ['<author><name>John Doe</name></author>', ''],
      ['<updated>2003-12-13T18:30:02Z</updated>', '<updated>13 Dec 2003</updated>'],
      ['<id>urn:uuid:60a76c80-d399-11d9-b93C-0003939e0af6</id>', '<id>/feed</id>'],
      ['<link href="http://example.org/"/>', '<link rel="self"/>'],
      // Appendix B has entries after everything else.
      ['</entry>', '</entry><subtitle>Too late</subtitle>'],
    ] as const)
      expect(await xmlFaults(example.replace(what, with_), 'atom.rng'), what).not.toEqual([]);
  });
});

describe.each(cases)('news of %s', (_, asked) => {
  it('as Atom is valid and well-formed', async () => {
    expect(await xmlFaults(atomFeed(asked), 'atom.rng')).toEqual([]);
    // Appendix B's rule on entries that a grammar cannot say: a link without rel or to an alternate, or content.
    for (const [entry] of atomFeed(asked).matchAll(/<entry>.*?<\/entry>/gs))
      expect(entry).toMatch(/<content|<link (?![^>]*rel=)|<link [^>]*rel="alternate"/);
  });

  it('as JSON Feed is valid', () => {
    expect(validJsonFeed(jsonFeed(asked)), JSON.stringify(validJsonFeed.errors)).toBe(true);
  });

  it('is read by a feed reader alike from both, under the same ids', () => {
    const atom = read(atomFeed(asked));
    const json = parseJsonFeed(JSON.stringify(jsonFeed(asked)));
    expect(
      atom.entries.map(({ id, title, updated, published, content }) => ({
        id,
        title,
        updated,
        published,
        content,
      })),
    ).toEqual(
      json.items?.map(({ id, title, date_modified, date_published, content_text }) => ({
        id,
        title,
        updated: date_modified,
        published: date_published,
        content: content_text,
      })) ?? [],
    );
    expect(atom.title).toBe(json.title);
  });
});

describe('a feed of news', () => {
  it('says when it was checked, until when it holds, whose it is and on what terms', () => {
    const feed = read(atomFeed(question([[0, noneOut]])));
    expect(feed).toMatchObject({
      id: 'https://hydrants.example/v1/en/out-of-service.atom',
      updated: '2026-03-04T20:05:00.000Z',
      authors: [{ name: 'Alder Reach Water' }],
      rights: 'CC0 1.0',
      dcterms: { valid: ['start=2026-03-04T20:05:00.000Z; end=2026-03-04T20:25:00.000Z; scheme=W3C-DTF;'] },
    });
    expect(feed.subtitle).toContain(
      '0 of 3 hydrants are out of service. Checked Wed, Mar 4, 14:05 CST. Do not rely on this after Wed, Mar 4, 14:25 CST.',
    );
    expect(feed.links).toContainEqual({
      rel: 'license',
      href: 'https://creativecommons.org/publicdomain/zero/1.0/',
    });
    expect(jsonFeed(question([[0, noneOut]]))._checked).toMatchObject({ hydrants: 3, outOfService: 0 });
  });

  it('of no known address has an id of its own in each language', () => {
    const ids = (['en', 'es'] as const).map(
      (locale) => read(atomFeed(question([[0, oneOut]], { locale, publicUrl: null }))).id,
    );
    expect(new Set(ids).size).toBe(2);
  });

  it('keeps an entry’s id and changes its time only when there is news', () => {
    const entry = (checks: readonly Check[]) => read(atomFeed(question(checks))).entries[0];
    const first = entry([[0, oneOut]]);
    expect(first).toMatchObject({
      id: `urn:uuid:${uuids.strike}`,
      title: 'Out of service: Hydrant H-1, Elm St at First Ave',
      updated: at(0),
    });
    expect(
      entry([
        [0, oneOut],
        [5, oneOut],
      ]),
    ).toEqual(first);
    expect(
      entry([
        [0, oneOut],
        [5, oneOut],
        [10, overAt(at(9))],
      ]),
    ).toMatchObject({
      id: `urn:uuid:${uuids.strike}`,
      title: 'Back in service: Hydrant H-1, Elm St at First Ave',
      published: at(0),
      updated: at(10),
    });
  });

  it('does not say back while the hydrant is out for another reason', () => {
    const { entries } = read(
      atomFeed(
        question([
          [0, twoReasons],
          [5, overAt(at(4), 'main-shut')],
        ]),
      ),
    );
    expect(entries[0]?.title).toMatch(/^One outage over, still out of service: Hydrant H-2/);
    expect(entries.map(({ title }) => title).join()).not.toContain('Back');
  });

  it('leads to the hydrant’s page in its own language', () => {
    const links = (locale: 'en' | 'es') =>
      read(atomFeed(question([[0, oneOut]], { locale }))).entries[0]?.links?.map(({ href }) => href);
    expect(links('en')).toEqual(['https://hydrants.example/hydrants/H-1/']);
    expect(links('es')).toEqual(['https://hydrants.example/es/hydrants/H-1/']);
  });

  it('holds the newest entries and no more', () => {
    const many = street(
      Array.from({ length: MOST_ENTRIES + 20 }, (_, index) =>
        aStatus(`X-${index}`, [anOutage(`id-${index}`, { cause: 'frozen', since: at(-index) })]),
      ),
    );
    const asked = question([[0, many]]);
    expect(read(atomFeed(asked)).entries).toHaveLength(MOST_ENTRIES);
    expect(jsonFeed(asked).items[0]?.id).toContain('id-0');
  });

  it('escapes what a document cannot hold', async () => {
    const odd = { ...streetHydrants[0]!, place: 'A\u0007 & <b>\ud800 "x"\t]]> ñ 消' };
    const edition = editionOf({ ...oneOut, inventory: { ...oneOut.inventory!, hydrants: [odd] } });
    const changes: FeedChanges = nextChanges(null, edition);
    const text = atomFeed({ edition, changes, locale: 'en', publicUrl: null });
    expect(await xmlFaults(text, 'atom.rng')).toEqual([]);
    expect(read(text).entries[0]?.title).toContain('A\ufffd & <b>\ufffd "x"');
  });

  it('says so when the time at which it was expected back has passed', () => {
    const late = street([aStatus('H-1', [anOutage(uuids.strike, { since: at(-60), expectedAt: at(-5) })])]);
    expect(read(atomFeed(question([[0, late]]))).entries[0]?.content).toContain(
      'It was expected back Wed, Mar 4, 14:00 CST. That time has passed.',
    );
  });

  it('of the town reads well', () => {
    const edition = editionOf(townSources());
    const { items } = jsonFeed({
      edition,
      changes: nextChanges(null, edition),
      locale: 'en',
      publicUrl: null,
    });
    expect(items.map(({ content_text }) => content_text).join('\n')).not.toMatch(/\[\w+\.|undefined|NaN/);
    expect(items.at(-1)?.content_text.split('\n')).toEqual([
      'Cause: Struck by a vehicle.',
      'Out since Fri, Feb 27, 08:05 CST.',
      'Repaired. It is not back until its tests are passed and its return is recorded.',
      'No time for its return is given yet.',
      expect.stringMatching(/^Position: 39\.\d{5}, -98\.\d{5}\.$/),
    ]);
  });
});

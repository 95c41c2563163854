import { describe, expect, it } from 'vitest';
import { atomFeed } from '../../../shared/feeds/atom.ts';
import { outageUri } from '../../../shared/feeds/ids.ts';
import { indexDocument } from '../../../shared/feeds/indexDocument.ts';
import { element } from '../../../shared/feeds/xml.ts';
import { aStrike } from '../../support/town.ts';
import { at, changesAfter, editionOf, noneOut, street, uuids } from '../../support/feeds.ts';

/** What every feed is put together from. */
describe('one element of XML', () => {
  it('keeps text and attributes as they were given', () => {
    // By hand from XML 1.0: §2.4 (signs that must be escaped), §3.3.3 (white space of an attribute that is written as it
    // is would be read as spaces), §2.11 (a carriage return as a line feed).
    expect(element('a', { b: 'x"y\nz\t<&>\r' }, 'p < q & r > "s"\n\t\r').xml).toBe(
      '<a b="x&quot;y&#10;z&#9;&lt;&amp;&gt;&#13;">p &lt; q &amp; r &gt; &quot;s&quot;\n&#9;&#13;</a>',
    );
  });
  it('leaves out what is nothing', () => {
    expect(element('a', { b: undefined }, null, undefined).xml).toBe('<a/>');
  });
});

describe('the id of an outage', () => {
  it('is its UUID as a URN (RFC 9562 §4), and a tag (RFC 4151) of whatever else it was recorded under', () => {
    expect(outageUri(uuids.strike)).toBe(`urn:uuid:${uuids.strike}`);
    // A URI has no spaces and no signs beyond ASCII (RFC 3986 §2).
    expect(outageUri('ñ 7')).toBe('tag:outage.invalid,2026:%C3%B1%207');
  });
});

describe('the index of feeds', () => {
  it('says in which language each feed of sentences is, and of those in codes none', () => {
    const { feeds } = indexDocument(editionOf(noneOut).snapshot, { publicUrl: null, alerts: true });
    for (const { href, language } of feeds)
      expect(language, href).toBe(/^\/v1\/(en|es)\//.exec(href)?.[1] ?? null);
  });
});

describe('a hydrant that is reported and has no page', () => {
  const reported = {
    ...street(),
    strikes: [aStrike(uuids.strike, { hydrantId: 'Z-9', since: at(-30) })],
  };
  const feed = atomFeed({
    edition: editionOf(reported),
    changes: changesAfter([0, reported]),
    locale: 'en',
    publicUrl: 'https://hydrants.example/',
  });
  const entry = /<entry>.*<\/entry>/s.exec(feed)?.[0];

  it('leads to the list', () => {
    expect(editionOf(reported).hydrants).toEqual([]);
    expect(entry).toContain('href="https://hydrants.example/"');
    expect(entry).not.toContain('/hydrants/Z-9/');
  });
  it('is said not to be in the inventory', () => {
    expect(entry).toMatch(/not in the (utility’s )?inventory/);
  });
});

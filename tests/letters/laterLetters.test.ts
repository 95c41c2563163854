import { describe, expect, it } from 'vitest';
import { laterMergeFields } from '../../shared/letters/later/fields.ts';
import { laterTemplate } from '../../shared/letters/later/letter.ts';
import { withAuthority, withContrary } from '../../shared/letters/later/authorities.ts';
import { replyText } from '../../shared/letters/later/reply.ts';
import type { Statement } from '../../shared/costs/statement.ts';
import { laterLetterKinds } from '../../shared/submissions/forms/claimLife/letterSent.ts';
import { shortReasons } from '../../shared/submissions/forms/claimLife/common.ts';
import { hasWords, locales, say } from '../../shared/words/index.ts';

/**
 * What a claimant may not threaten or promise, and why. From memory unless named: rules of professional conduct and
 * extortion statutes keep a civil claimant from threatening prosecution for money; the Fair Credit Reporting Act rules
 * credit reports; a suit is announced by whoever will bring it. Common practice.
 */
const mayNotSay =
  /prosecut(e|ion)\b|arrest|criminal|procesar|penal\b|license|licencia|credit report|historial de cr[eé]dito|lawsuit|sue you|will sue|legal action|acciones? legales|demandarl[oe]|shall\b|immediately pay|or else/i;

describe.each(locales)('letters after the packet, in %s', (locale) => {
  it.each(laterLetterKinds)('%s names only fields there are, and threatens nothing', (letter) => {
    const template = laterTemplate(locale, letter);
    const used = [...template.matchAll(/\{([^{}]*)\}/g)].map(([, field]) => field!);
    expect(used.length).toBeGreaterThan(0);
    expect(used.filter((field) => !(laterMergeFields as readonly string[]).includes(field))).toEqual([]);
    expect(template).not.toMatch(mayNotSay);
    expect(hasWords(`letter.kind.${letter}`)).toBe(true);
  });

  it.each(laterMergeFields)('the field %s says what it means', (field) =>
    expect(hasWords(`letter.field.${field}`)).toBe(true),
  );

  it.each(shortReasons)(
    'a reply to “%s” has its sentence, and an authority only where one is listed',
    (reason) => {
      expect(say(locale, `letter.reply.${reason}`).length).toBeGreaterThan(10);
      expect(hasWords(`letter.authority.${reason}`)).toBe(withAuthority.includes(reason));
      expect(hasWords(`letter.contrary.${reason}`)).toBe(withContrary.includes(reason));
    },
  );

  // The paragraphs as the costs reference quotes them: 23 CFR 645.117(b), (d), (e)(1), (h)(2), (h)(3); 2 CFR 200.430(g);
  // Horton v. Georgia Power (1979); Duke Power v. Thornton (1991); Curt's Trucking v. Anchorage, 578 P.2d 975 (1978).
  it.each([
    ['depreciation', ['645.117(h)(2)', 'Horton', 'Thornton']],
    ['betterment', ['645.117(h)(3)']],
    ['overhead', ['645.117(d)', '578 P.2d 975', '13']],
    ['hours', ['645.117(b)']],
    ['materials', ['645.117(e)(1)']],
    ['no-evidence', ['200.430(g)']],
  ])('the authority for %s is cited by its number', (reason, cited) => {
    for (const number of cited) expect(say(locale, `letter.authority.${reason}`)).toContain(number);
  });

  // The costs reference: depreciation is often not deducted on parts of systems, and deducted by some courts (Ohio).
  it('a reply on depreciation follows what the settings say of the courts here', () => {
    const rule = { citation: 'Doe v. Roe', jurisdiction: 'Here', confirmedBy: null };
    const reply = (position?: 'not-deducted' | 'deducted' | 'replacement-less-depreciation') =>
      replyText(
        [{ lineId: null, reason: 'depreciation', cents: 100, words: null }],
        { lines: [] } as unknown as Statement,
        locale,
        position && { depreciation: { position, ...rule } },
      );
    expect(reply()).toContain('645.117(h)(2)');
    expect(reply()).not.toContain('Doe v. Roe');
    expect(reply('not-deducted')).toMatch(/Doe v\. Roe.*645\.117\(h\)\(2\)/);
    for (const position of ['deducted', 'replacement-less-depreciation'] as const) {
      expect(reply(position)).not.toContain('645.117');
      expect(reply(position)).not.toContain('Doe v. Roe');
    }
  });
});

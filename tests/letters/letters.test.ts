import { describe, expect, it } from 'vitest';
import { evidenceFor } from '../../shared/letters/evidence.ts';
import { mergeFields } from '../../shared/letters/fields.ts';
import { letterKindFor } from '../../shared/letters/kind.ts';
import { letterTemplate } from '../../shared/letters/letter.ts';
import { letterTextOf } from '../../shared/letters/recorded.ts';
import { packetLetterOf } from '../../shared/packet/content.ts';
import { packetDocument } from '../../shared/packet/document.ts';
import { claimOpened } from '../../shared/submissions/forms/claimOpened.ts';
import { letterKinds } from '../../shared/submissions/forms/letterText.ts';
import type { BodyOf, Submission } from '../../shared/submissions/submission.ts';
import { hasWords, locales, say } from '../../shared/words/index.ts';
import { demoUtility } from '../../infra/local/demo/utility.ts';
import { demoClaim, demoContent, demoCase, type DemoClaim } from '../support/demoClaim.ts';

type PayerKind = BodyOf<'claim-opened'>['payerKind'];
const payerKinds = claimOpened.body.shape.payerKind.options;

/** The demo's claim against another payer, and with another party. */
function claimAgainst(
  payerKind: PayerKind,
  change: { claim?: Partial<BodyOf<'claim-opened'>>; party?: Partial<BodyOf<'party'>> } = {},
): DemoClaim {
  const claim = demoClaim();
  return {
    ...claim,
    submissions: claim.submissions.map((submission): Submission => {
      if (submission.kind === 'claim-opened')
        return { ...submission, body: { ...submission.body, payerKind, ...change.claim } };
      if (submission.kind === 'party')
        return { ...submission, body: { ...submission.body, ...change.party } };
      return submission;
    }),
  };
}

const told = (paragraphs: readonly string[]): string => paragraphs.join('\n\n');

describe('which letter', () => {
  it('hangs on who pays', () => {
    const of = (payerKind: PayerKind) => letterKindFor({ payerKind, payerName: 'Somebody', hitAndRun: 'no' });
    expect(payerKinds.map((kind) => [kind, of(kind)])).toEqual([
      ['drivers-insurer', 'demand-insurer'],
      ['self-insured', 'demand-self-insured'],
      ['government', 'notice-government'],
      ['own-policy', 'claim-own-policy'],
      ['driver', 'demand-driver'],
      ['restitution', 'restitution-statement'],
      ['unknown', 'cover-unknown-payer'],
    ]);
  });

  it('is the one without a payer after a hit and run, until somebody is named', () => {
    const of = (payerKind: PayerKind, payerName: string | null) =>
      letterKindFor({ payerKind, payerName, hitAndRun: 'yes' });
    expect(of('drivers-insurer', null)).toBe('cover-unknown-payer');
    expect(of('driver', null)).toBe('cover-unknown-payer');
    expect(of('drivers-insurer', 'Harrowgate Casualty')).toBe('demand-insurer');
    expect(of('own-policy', null)).toBe('claim-own-policy');
  });
});

describe.each(locales)('every letter, in %s', (locale) => {
  it.each(payerKinds)('%s: from the demo facts, with no field left and nothing empty', async (payerKind) => {
    const { content } = await demoContent(claimAgainst(payerKind), { locale });
    const text = told(content.letter.paragraphs);
    expect(text).not.toMatch(/[{}[\]]/);
    expect(text).not.toMatch(/null|undefined|NaN/);
    expect(text).not.toMatch(/ [.,;:]|\.\.|,\./);
    // What was done, where, when and for how much is in each of them.
    expect(text).toContain('TH-0071');
    expect(text).toContain('Sailmaker Street at Thimble Avenue');
    expect(text).toContain(
      new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(
        content.statement.totalCents / 100,
      ),
    );
    const document = packetDocument(content);
    const blocks = JSON.stringify(document.blocks, (_, value: unknown) =>
      typeof value === 'function' ? undefined : value,
    );
    expect(blocks).toContain(say(locale, 'letter.footer'));
    expect(blocks).not.toContain('[letter.');
  });

  it.each(letterKinds)('%s: the template uses fields that exist, and says no more than it may', (letter) => {
    const template = letterTemplate(locale, letter);
    const used = [...template.matchAll(/\{([^{}]*)\}/g)].map(([, field]) => field!);
    expect(used.filter((field) => !(mergeFields as readonly string[]).includes(field))).toEqual([]);
    // What a claimant may not threaten, and what only counsel may say (common practice, no source).
    expect(template).not.toMatch(
      /prosecut(e|ion)\b|arrest|criminal|license|licencia|credit report|lawsuit|sue you|demandar|interest|intereses|shall|statute/i,
    );
  });

  it.each(mergeFields)('the field %s says what it means', (field) => {
    expect(hasWords(`letter.field.${field}`)).toBe(true);
    expect(say(locale, `letter.field.${field}`).length).toBeGreaterThan(3);
  });
});

describe('what a letter may name', () => {
  it('is nobody but the claim’s own payer: no driver, owner, adjuster, officer or caller', async () => {
    for (const payerKind of payerKinds) {
      const { content } = await demoContent(
        claimAgainst(payerKind, {
          party: {
            driver: { name: 'CANARY Driver', address: 'CANARY Lane', phone: '555-0177' },
            owner: { name: 'CANARY Owner', address: null, phone: null },
            note: 'CANARY note',
          },
        }),
      );
      expect(JSON.stringify(content)).not.toContain('CANARY');
    }
  });

  it('is the own policy’s number, and not the driver’s, on a claim on the own policy', async () => {
    const { content } = await demoContent(
      claimAgainst('own-policy', {
        claim: {
          payer: { name: 'Pool', address: 'Box 1', attention: null, reference: 'OWN-77' },
        },
      }),
    );
    const text = told(content.letter.paragraphs);
    expect(text).toContain('our policy OWN-77.');
    // The driver's policy is no business of ours to send them.
    expect(JSON.stringify(content)).not.toContain('HC-4402-881');
    expect(text).toContain('deductible');
    expect(text).toContain('proof of loss');
  });

  it('in a statement for restitution, each kind of cost, which add up to the total', async () => {
    const { content } = await demoContent(claimAgainst('restitution'));
    const list = content.letter.paragraphs.find(
      (paragraph) => paragraph.includes('\n') && paragraph.includes('$'),
    )!;
    const cents = list
      .split('\n')
      .filter((line) => line.includes('$'))
      .map((line) => Math.round(Number(line.replace(/^.*\$/, '').replaceAll(',', '')) * 100));
    expect(cents.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(content.statement.totalCents);
    expect(cents.at(-1)).toBe(content.statement.totalCents);
  });

  it('leaves a sentence out where its field is empty, and says that the driver left', async () => {
    const { content } = await demoContent(
      claimAgainst('unknown', {
        claim: { payer: { name: null, address: null, attention: null, reference: null } },
        party: {
          hitAndRun: 'yes',
          police: null,
          crashReport: null,
          vehicles: [],
          driver: null,
          insurer: null,
        },
      }),
    );
    const text = told(content.letter.paragraphs);
    expect(content.letter.letter).toBe('cover-unknown-payer');
    expect(text).toContain('The driver left the scene');
    expect(text).not.toMatch(/police report|\[|\]/);
  });

  it('says what changed from the second revision on', async () => {
    const issue = {
      state: 'frozen' as const,
      revision: 2,
      asOf: '2026-11-25T14:05:00Z',
      changes: 'The paving invoice came.',
      added: [],
    };
    const { content } = await demoContent(demoClaim(), { issue });
    expect(told(content.letter.paragraphs)).toContain(
      'This is revision 2 of our packet. What has changed: The paving invoice came.',
    );
  });
});

describe('the clerk’s own text', () => {
  const edited = (text: string | null, letter: BodyOf<'letter-text'>['letter'] = 'demand-insurer') =>
    demoClaim((teller, { claimId }) => {
      const subject = { type: 'claim', claimId } as const;
      teller.tell('letter-text', subject, 200, { letter: 'demand-insurer', text: 'An earlier text.' });
      teller.tell('letter-text', subject, 190, { letter, text });
    });

  it('is merged like the template, the last recorded one counts, and it is a record behind the packet', async () => {
    const claim = edited('Dear {payer},\n\nplease pay {demand}.\nThank you.');
    const { content, found } = await demoContent(claim);
    expect(content.letter.paragraphs).toEqual([
      'Dear Harrowgate Casualty,',
      expect.stringMatching(/^please pay \$[\d,]+\.\d\d\.\nThank you\.$/),
    ]);
    const record = letterTextOf(found.all, claim)!.fact.submissionId;
    expect(content.letter.submissionId).toBe(record);
    // A freeze compares these: the letter's record is among them, the earlier one is not.
    const letters = found.recorded.filter(({ submission }) => submission.kind === 'letter-text');
    expect(letters.map(({ submission }) => submission.submissionId)).toEqual([record]);
    expect(content.manifest.submissions.map(({ submissionId }) => submissionId)).toContain(record);
  });

  it('for another letter than the one that is sent is not used', async () => {
    const { content } = await demoContent(edited('To the council.', 'notice-government'));
    expect(content.letter.paragraphs).toEqual(['An earlier text.']);
  });

  it('that was forgotten leaves the template', async () => {
    const { content } = await demoContent(edited(null));
    expect(content.letter.submissionId).toBeNull();
    expect(content.letter.paragraphs.length).toBeGreaterThan(4);
  });

  it('with an unknown or an empty field is a problem that names it, in both languages', async () => {
    const { found } = await demoContent(edited('Pay {demnd} under {payerReference}. {'));
    const letter = packetLetterOf({
      locale: 'en',
      settings: demoUtility,
      issue: { state: 'preview', asOf: '2026-11-25T14:05:00Z' },
      preparedBy: 'c-301',
      ...found,
      demandCents: 1,
      otherDemandsCents: 0,
      hydrant: null,
      photos: new Map(),
    });
    expect(letter.problems).toEqual([
      { code: 'letter-brace', path: 'letter.', params: { field: '' } },
      { code: 'letter-field-unknown', path: 'letter.demnd', params: { field: 'demnd' } },
      { code: 'letter-field-empty', path: 'letter.payerReference', params: { field: 'payerReference' } },
    ]);
    expect(letter.paragraphs).toEqual(['Pay [demnd] under [payerReference]. {']);
    for (const locale of locales)
      for (const { code, params } of letter.problems) {
        const sentence = say(locale, `problem.${code}`, params);
        expect(sentence).toContain(String(params['field']));
        expect(sentence).not.toContain('[problem.');
      }
  });

  it('is plain text: markup stays as typed, and a fact that looks like a field is not one', async () => {
    const claim = claimAgainst('drivers-insurer', {
      claim: {
        payer: { name: '{total} <b>&amp; [Sons]', address: 'Box', attention: null, reference: null },
      },
    });
    const withText = {
      ...claim,
      submissions: [
        ...claim.submissions,
        ...edited('<script>{payer}</script> [sic]')
          .submissions.filter(({ kind }) => kind === 'letter-text')
          .slice(-1),
      ].map((submission): Submission =>
        submission.kind === 'letter-text'
          ? { ...submission, subject: { type: 'claim', claimId: claim.claimId } }
          : submission,
      ),
    };
    const { content } = await demoContent(withText);
    expect(content.letter.paragraphs).toEqual(['<script>{total} <b>&amp; [Sons]</script> [sic]']);
  });
});

describe('what each payer asks for', () => {
  const lacking = (claim: DemoClaim): string[] => {
    const found = demoCase(claim);
    const body = found.claim.fact.body;
    return evidenceFor({
      claim: body,
      party: claim.submissions.flatMap((each) =>
        each.submissionId === body.partyId && each.kind === 'party' ? each.body : [],
      )[0]!,
      strike: found.strike,
      facts: found.facts,
      statement: found.statement,
    })
      .filter(({ there }) => !there)
      .map(({ code }) => code);
  };

  it('is there for the demo’s insurer', () => {
    expect(lacking(demoClaim())).toEqual([]);
  });

  it('is the police report, the policy’s number and the case number where these count', () => {
    expect(lacking(claimAgainst('own-policy'))).toEqual(['own-policy-number', 'police-report']);
    expect(lacking(claimAgainst('restitution'))).toEqual(['case-number']);
  });

  it('is everything about the driver, when nothing is known', () => {
    const nothing = claimAgainst('driver', {
      claim: { payer: { name: null, address: null, attention: null, reference: null } },
      party: { driver: null, police: null, vehicles: [] },
    });
    expect(lacking(nothing)).toEqual(['report-number', 'driver-named', 'payer-address']);
  });
});

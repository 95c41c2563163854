import { expect, it } from 'vitest';
import { formatCents } from '../../shared/costs/money.ts';
import { letterTemplate } from '../../shared/letters/letter.ts';
import { mergeLetter } from '../../shared/letters/merge.ts';
import { claimOpened } from '../../shared/submissions/forms/claimOpened.ts';
import { demoClaim, demoContent } from '../support/demoClaim.ts';

const claim = (deductibleCents?: number) => {
  const told = demoClaim();
  for (const { kind, body } of told.submissions)
    if (kind === 'claim-opened')
      Object.assign(body, {
        payerKind: 'own-policy',
        ...(deductibleCents === undefined ? {} : { deductibleCents }),
      });
  return told;
};

it('the letter to the own policy says the deductible and what is asked for without it', async () => {
  const { content } = await demoContent(claim(1_000_00));
  const asked = formatCents(content.claim.demandCents - 1_000_00);
  expect(content.letter.paragraphs.join('\n')).toContain(
    `By our records it is $1,000.00; less that, we ask you to pay ${asked}.`,
  );
});

it('says nothing of it where nobody recorded one, and a claim of before needs none', async () => {
  const { content } = await demoContent(claim());
  expect(content.claim.deductibleCents).toBeNull();
  expect(content.letter.paragraphs.join('\n')).toContain(
    'subject to the deductible of the policy. Please confirm',
  );
  const opened = demoClaim().submissions.find(({ kind }) => kind === 'claim-opened');
  expect(claimOpened.body.safeParse(opened?.body).success).toBe(true);
});

it.each(['en', 'es'] as const)(
  'the place to check a packet is named where the site has an address: %s',
  (locale) => {
    const text = letterTemplate(locale, 'demand-insurer');
    expect(text).toContain('[ {howToCheck}]');
    expect(mergeLetter('A.[ {howToCheck}]', { howToCheck: null }).paragraphs).toEqual(['A.']);
  },
);

import { evidenceFor } from '../../letters/evidence.ts';
import { rule, type Rule } from '../case.ts';

/** As the catalogue chooses by it: a choice there has no hyphens. */
const codeInWords = (code: string): string =>
  code.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

/** What this payer asks for and no other rule does. */
export const payerRules: readonly Rule[] = [
  rule('evidence-for-payer', null, (audited) =>
    evidenceFor(audited)
      .filter(({ there, askedBy }) => !there && askedBy === null)
      .map(({ code, add }) => ({
        about: code,
        atStakeCents: 0,
        params: { evidence: codeInWords(code) },
        ...(add === null ? {} : { add }),
      })),
  ),
];

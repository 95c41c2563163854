import { damageClasses } from '../../../../../../shared/strikes/damage.ts';
import { textOf, type Leaf, type Node, type Values } from '../../nodes.ts';
import { answered } from '../parts.ts';

/** Fields that several lists of an edition share, and the codes that the form suggests. */

/** Lists of suggestions that the form draws: codes that stand in it already. */
export const authorityCodes = 'rate-book-authorities';
export const payRuleCodes = 'rate-book-pay-rules';
export const laborCodes = 'rate-book-labor';

export const code = (name: string): Leaf => ({ type: 'text', name, keypad: 'code', required: true });
export const title: Leaf = { type: 'text', name: 'title', words: 'field.rates.title', required: true };
export const usd = (name: string, more: Partial<Extract<Leaf, { type: 'text' }>> = {}): Leaf => ({
  type: 'text',
  name,
  keypad: 'code',
  required: true,
  ...more,
});
export const authority = (name = 'authorityId'): Leaf => ({
  type: 'text',
  name,
  words: 'field.rates.authorityId',
  keypad: 'code',
  suggestions: authorityCodes,
  required: true,
});
export const codes = (name: string, suggestions?: string): Leaf => ({
  type: 'text',
  name,
  keypad: 'code',
  many: true,
  ...(suggestions === undefined ? {} : { suggestions }),
});
export const damage = (required: boolean): Leaf => ({
  type: 'choices',
  name: 'damage',
  list: 'damage',
  choices: damageClasses,
  required,
});

/** A row's own line while it is shut: its code, its name, its rate. */
export const headed =
  (...names: readonly string[]) =>
  (row: Values): string =>
    names
      .map((name) => textOf(row[name]).trim())
      .filter((text) => text !== '')
      .join(' · ');

export const increment: readonly Node[] = [
  { type: 'yes-no', name: '_increment', words: 'field.rates.increment' },
  {
    type: 'when',
    absent: true,
    test: answered('_increment', 'yes'),
    nodes: [
      {
        type: 'number',
        name: 'increment.minutes',
        words: 'field.rates.increment.minutes',
        whole: true,
        required: true,
      },
      {
        type: 'choice',
        name: 'increment.toward',
        words: 'field.rates.increment.toward',
        list: 'toward',
        choices: ['up', 'nearest'],
        required: true,
      },
      {
        type: 'choice',
        name: 'increment.of',
        words: 'field.rates.increment.of',
        list: 'incrementOf',
        choices: ['call', 'day'],
        required: true,
      },
    ],
  },
];

import { describe, expect, it } from 'vitest';
import { namesAsIds } from '../../shared/packet/namesAsIds.ts';

const people = [
  { personId: 'w-1', name: 'Mark Ferro' },
  { personId: 'w-2', name: 'Ana Ferro-Ruiz' },
  { personId: 'w-3', name: 'José Ibáñez (night)' },
  { personId: 'w-4', name: 'Li O’Dowd' },
];

describe('names of the roll in a text', () => {
  it.each([
    ['a whole name', 'Mark Ferro closed it', 'w-1 closed it'],
    ['a whole name in another case, over two lines', 'MARK\nferro closed it', 'w-1 closed it'],
    ['the longer of two that begin alike', 'Ana Ferro-Ruiz closed it', 'w-2 closed it'],
    ['a first name', 'Ana’s tick', 'w-2’s tick'],
    ['a family name that two bear', 'Ferro did it', '[…] did it'],
    ['half of a double name', 'Ruiz did it', 'w-2 did it'],
    ['a name with marks', 'Ask José, or Ibáñez', 'Ask w-3, or w-3'],
    ['a name with an apostrophe', 'O’Dowd was there', 'w-4 was there'],
  ])('%s', (_, text, expected) => {
    expect(namesAsIds(text, people)).toBe(expected);
  });

  it.each([
    ['a word that is also a name', 'removed the mark at 6:50'],
    ['a name inside a longer word', 'Marked by hand, Analyst'],
    ['somebody who is not on the roll', 'Zoe was there'],
    ['a name that begins a dollar pattern', 'paid $& and $1'],
  ])('leaves %s', (_, text) => {
    expect(namesAsIds(text, people)).toBe(text);
  });

  it('is the text itself where the roll is empty or has a name of nothing', () => {
    expect(namesAsIds('Mark', [])).toBe('Mark');
    expect(namesAsIds('Mark', [{ personId: 'w-9', name: ' ' }])).toBe('Mark');
  });
});

interface Named {
  readonly personId: string;
  readonly name: string;
}

const fold = (text: string): string => text.toLocaleLowerCase('en');

/** Words of letters with marks; a hyphen or an apostrophe inside is part of the name ("Marsh-Aldana", "O'Dowd"). */
const WORDS = /[\p{L}\p{M}]+(?:['’-][\p{L}\p{M}]+)*/gu;

/** Shorter ones are initials and particles, which are in every text. */
const SHORTEST = 3;

/**
 * What somebody wrote for colleagues, with the people of the utility's roll by their ids, for readers who are to know
 * no worker by name. A whole name and a part of one are replaced; a part that several bear, by an ellipsis in
 * brackets, because it does not say who is meant. A part counts only where it begins with a capital: "mark" is a word.
 * @param people the utility's roll; people who are not on it are not known here, and stay.
 */
export function namesAsIds(text: string, people: readonly Named[]): string {
  // The longest first: one name may begin another.
  const whole = people
    .filter(({ name }) => name.trim() !== '')
    .toSorted((a, b) => b.name.length - a.name.length)
    .reduce((left, { name, personId }) => left.replace(wholeName(name), () => personId), text);
  const bearers = new Map<string, Set<string>>();
  for (const { name, personId } of people)
    for (const part of partsOf(name))
      bearers.set(part, (bearers.get(part) ?? new Set<string>()).add(personId));
  return whole.replace(WORDS, (word) => {
    const possessive = /['’]s$/.exec(word)?.[0] ?? '';
    const stem = word.slice(0, word.length - possessive.length);
    const ids = /^\p{Lu}/u.test(stem) ? bearers.get(fold(stem)) : undefined;
    if (!ids) return word;
    const [only] = ids;
    return `${ids.size === 1 && only !== undefined ? only : '[…]'}${possessive}`;
  });
}

function partsOf(name: string): string[] {
  return [...name.matchAll(WORDS)]
    .flatMap(([word]) => [word, ...word.split('-')])
    .filter((part) => part.length >= SHORTEST)
    .map(fold);
}

const wholeName = (name: string): RegExp =>
  new RegExp(
    `(?<![\\p{L}\\p{M}])${name
      .trim()
      .split(/\s+/)
      .map((part) => part.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&'))
      .join('\\s+')}(?![\\p{L}\\p{M}])`,
    'giu',
  );

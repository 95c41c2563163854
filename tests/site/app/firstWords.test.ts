import { describe, expect, it } from 'vitest';
import { en } from '../../../shared/words/en/index.ts';
import { es } from '../../../shared/words/es/index.ts';
import { firstBeginnings } from '../../../site/src/app/words/firstWords.ts';
import { words as firstEn } from '../../../site/src/app/words/first.en.ts';
import { words as firstEs } from '../../../site/src/app/words/first.es.ts';

describe('the words of the first screens', () => {
  it.each(firstBeginnings)('%s begins some word', (start) => {
    expect(Object.keys(en).some((key) => key.startsWith(start))).toBe(true);
  });

  it('are the catalogue’s own, the same ones in both languages', () => {
    expect(Object.keys(firstEn).sort()).toEqual(Object.keys(firstEs).sort());
    for (const [key, text] of Object.entries(firstEn)) expect(text).toBe((en as Record<string, string>)[key]);
    for (const [key, text] of Object.entries(firstEs)) expect(text).toBe((es as Record<string, string>)[key]);
    expect(firstEn['shell.crew']).toBe(en['shell.crew']);
  });

  it('are a small part of all of them', () => {
    expect(Object.keys(firstEn).length).toBeLessThan(Object.keys(en).length / 3);
  });
});

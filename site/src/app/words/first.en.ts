import { en } from '../../../../shared/words/en/index.ts';
import { problems } from '../../../../shared/words/en/problems.ts';
import { firstWords } from './firstWords.ts';

/** In the browser's build the finished list stands in this file's place (`site/asNeeded.ts`), and nothing is picked there. */
export const words: Record<string, string> = firstWords(en, problems);

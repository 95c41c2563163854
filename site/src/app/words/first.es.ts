import { es } from '../../../../shared/words/es/index.ts';
import { problems } from '../../../../shared/words/es/problems.ts';
import { firstWords } from './firstWords.ts';

/** In the browser's build the finished list stands in this file's place (`site/asNeeded.ts`), and nothing is picked there. */
export const words: Record<string, string> = firstWords(es, problems);

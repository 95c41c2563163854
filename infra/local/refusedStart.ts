import type { WordKey, WordParams } from '../../shared/words/index.ts';

/** A command cannot do its work for a reason that the person at the terminal can put right: one line, exit code 1. */
export class RefusedStart extends Error {
  override readonly name = 'RefusedStart';
  readonly key: WordKey;
  readonly params: WordParams;

  constructor(key: WordKey, params: WordParams = {}) {
    super(key);
    this.key = key;
    this.params = params;
  }
}

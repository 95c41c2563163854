import type { Mail } from '../../../shared/digest/outbox.ts';

/** Hands a letter on. */
export interface MailSender {
  /**
   * Resolves once it is handed over, with the service's name for it. `key` is the same for the same letter, so that a
   * sender that can tells a repeat. Throws `NotSent` with a code, or whatever the service threw.
   */
  send(mail: Mail, key: string): Promise<string | null>;
}

/** The mail service would not take a letter; `code` is its reason, without a word of the letter. */
export class NotSent extends Error {
  override readonly name = 'NotSent';
  readonly code: string;

  constructor(code: string, options: { readonly cause?: unknown } = {}) {
    super(code, options);
    this.code = code;
  }
}

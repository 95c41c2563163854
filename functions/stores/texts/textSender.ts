/** One text message. `text` holds signs of the GSM alphabet alone. */
export interface TextMessage {
  /** Names whom it is for; a sender that keeps the numbers itself needs no other address. */
  readonly recipientId: string;
  /** E.164. */
  readonly phone: string;
  readonly text: string;
}

/** Hands a text message on. */
export interface TextSender {
  /** Resolves once it is handed over, with the service's name for it. Throws `NotSent` with a code. */
  send(message: TextMessage, key: string): Promise<string | null>;
}

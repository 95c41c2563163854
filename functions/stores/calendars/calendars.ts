/** A private address of a person's calendar: what is kept of it. The address itself is kept nowhere. */
export interface CalendarAddress {
  readonly personId: string;
  /** SHA-256 of the secret in the address, hex. */
  readonly tokenSha256: string;
  readonly locale: 'en' | 'es';
  readonly madeAt: string;
}

/** Private addresses of calendars, one a person. */
export interface Calendars {
  /** Makes an address the person's only one; the one before leads nowhere from then on. */
  put(address: CalendarAddress): Promise<void>;
  /** Takes a person's address away. False when there was none. */
  revoke(personId: string): Promise<boolean>;
  ofPerson(personId: string): Promise<CalendarAddress | null>;
  /** Whose address a secret with this hash is, while it is that person's. Compares in constant time. */
  find(tokenSha256: string): Promise<CalendarAddress | null>;
}

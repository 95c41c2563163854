/** What the account may send. */
export interface SendingAccount {
  /** Whether its mail service sends to any address: left its sandbox, and was not paused. */
  mailIsOpen(): Promise<boolean>;
  /** Whether somebody has confirmed that this address is theirs. */
  isConfirmed(address: string): Promise<boolean>;
  /** Whether texts go to any telephone. */
  textsAreOpen(): Promise<boolean>;
}

/** What the fold of a claim alone cannot know; what is left out is not judged. */
export interface LifeContext {
  /** Left out, days of an opening and a packet are those of UTC. */
  readonly timeZone?: string;
  /** Without it no instalment is missed. */
  readonly today?: string;
  readonly struckOn?: string;
  /** The statement's total: no court can order more for this damage. */
  readonly statementCents?: number;
}

import type { RateBookEdition } from '../costs/rateBook.ts';
import type { Statement } from '../costs/statement.ts';
import type { Hydrant } from '../inventory/hydrant.ts';
import type { StrikeState } from '../strikes/state.ts';
import type { Effective } from '../submissions/effective.ts';
import type { Exhibit } from '../submissions/fields.ts';
import type { FactKind } from '../submissions/kinds.ts';
import type { BodyOf } from '../submissions/submission.ts';

/** Everything that an insurer's reader would look at, and what the utility alone can know of its other work. */
export interface AuditCase {
  /** UTC instant at which the packet is read. */
  readonly now: string;
  readonly timeZone: string;
  readonly claim: BodyOf<'claim-opened'>;
  /** The claim's own party; null while nobody is known. */
  readonly party: BodyOf<'party'> | null;
  readonly strike: StrikeState;
  /** Facts of the strike's streams and of its hydrant's. */
  readonly facts: readonly Effective[];
  readonly hydrant: Hydrant | null;
  readonly model: BodyOf<'hydrant-model'> | null;
  readonly statement: Statement;
  /** Every edition of the rate book, with when it was recorded. */
  readonly editions: readonly { readonly edition: RateBookEdition; readonly recordedAt: string }[];
  readonly photos: readonly AuditPhoto[];
  /** Work of the same people on other strikes, near these days. */
  readonly elsewhere: readonly {
    readonly strikeId: string;
    readonly workerId: string;
    readonly from: string;
    readonly to: string;
  }[];
  /** The utility's own past repairs of the same extent: people and hours. */
  readonly pastRepairs: readonly { readonly people: number; readonly laborHours: number }[];
  /** Last day to sue, by the utility's setting, with its citation; null while there is no setting. */
  readonly limitation: { readonly lastDay: string; readonly citation: string } | null;
}

export interface AuditPhoto {
  readonly exhibit: Exhibit;
  readonly submissionId: string;
  readonly recordedAt: string;
  /** The bytes are here. */
  readonly arrived: boolean;
  /** What the camera wrote into the file, as it wrote it (EXIF, usually without a zone); null: nothing, or not read. */
  readonly cameraTime: string | null;
}

/** One likely objection. Words: `objection.<rule>`, and `objection.<rule>.answer` for what would answer it. */
export interface Objection {
  /** The rule, and what it is about where it can arise more than once. An answer names it. */
  readonly key: string;
  readonly rule: string;
  /** What could be cut if the insurer is right, whole cents, never more than the demand can hold. */
  readonly atStakeCents: number;
  readonly params: Readonly<Record<string, string | number>>;
  readonly lineId: string | null;
  /** Where the evidence that answers it is added: a form, or null where nothing can be added. */
  readonly add: FactKind | null;
  /**
   * Recorded submissions of that kind which a correction would put right, by the id of the first of each chain. Empty:
   * what answers it is recorded anew.
   */
  readonly corrects: readonly string[];
}

export interface Found {
  readonly about?: string;
  readonly atStakeCents: number;
  readonly params?: Objection['params'];
  readonly lineId?: string;
  /** Where this one is answered, when it is not where the rule says. */
  readonly add?: FactKind;
  /** The submissions that it is about, where the line does not say. */
  readonly of?: readonly string[];
}

/** One rule: a small question to the case. */
export interface Rule {
  readonly rule: string;
  readonly add: FactKind | null;
  readonly find: (audited: AuditCase) => readonly Found[];
}

export const rule = (name: string, add: FactKind | null, find: Rule['find']): Rule => ({
  rule: name,
  add,
  find,
});

/** One finding when something holds, none when it does not. */
export const when = (holds: boolean, found: () => Found): readonly Found[] => (holds ? [found()] : []);

import type { ClaimState } from '../../../../shared/claims/state.ts';
import type { Hydrant } from '../../../../shared/inventory/hydrant.ts';
import type { HydrantStatus } from '../../../../shared/outages/hydrantStatus.ts';
import type { StrikeState } from '../../../../shared/strikes/state.ts';
import type { Recorded } from '../../../../shared/submissions/recorded.ts';
import type { FactKind } from '../../../../shared/submissions/kinds.ts';
import type { Reader } from '../../../../shared/units/format.ts';
import type { Node, Values } from './nodes.ts';

/** What is known of the job when a form is opened. Everything may be missing: there may be no signal. */
export interface FormContext {
  readonly now: Date;
  readonly zone: string;
  readonly personId: string;
  readonly hydrantId: string | null;
  readonly hydrant: Hydrant | null;
  readonly status: HydrantStatus | null;
  readonly strike: StrikeState | null;
  /** The strike's story as far as this person may read it. */
  readonly history: readonly Recorded[];
  /** What was recorded from the hydrant's own page since the strike. */
  readonly ofHydrant: readonly Recorded[];
  /** What this device knows of the hydrant's own stream and of its other strikes, for hold points and returns. */
  readonly around: readonly Recorded[];
  /** The hydrant's flow tests, as recorded. */
  readonly flowTests: readonly Recorded[];
  readonly claim: ClaimState | null;
  /** What is recorded of the claim. */
  readonly events: readonly Recorded[];
  /** What the address asks for beside the job: the deadline that is answered. */
  readonly asked: Readonly<Record<string, string>>;
  /** A number for the next claim, as a proposal: the server alone says whether it is free. */
  readonly nextClaimNumber: string;
}

/** How one kind of submission is asked for. */
export interface FormSpec {
  readonly kind: FactKind;
  readonly nodes: readonly Node[];
  /** Groups that are null unless something was said in them. */
  readonly nullable: readonly string[];
  /** What a new form starts with. */
  readonly blank: (context: FormContext) => Values;
  /** What follows in the form itself from what was just typed; times are in the zone given. */
  readonly follow?: (values: Values, zone: string) => Values;
  /** When the thing happened, from its body; null leaves it to the time the form was opened. */
  readonly occurredAt: (body: Record<string, unknown>) => string | null;
  /** Fills in what follows from the answers; words that it writes are for the reader given, who is the utility. */
  readonly complete?: (body: Record<string, unknown>, reader: Reader) => Record<string, unknown>;
  /** Steering answers (`_…`) that a recorded body implies, for a correction. */
  readonly steering?: (body: Record<string, unknown>) => Values;
}

/** The first of these fields that holds an instant. */
export const firstInstant =
  (...names: readonly string[]) =>
  (body: Record<string, unknown>): string | null => {
    for (const name of names) {
      const value = name
        .split('.')
        .reduce<unknown>(
          (inner, key) =>
            typeof inner === 'object' && inner !== null ? (inner as Record<string, unknown>)[key] : null,
          body,
        );
      if (typeof value === 'string') return value;
    }
    return null;
  };

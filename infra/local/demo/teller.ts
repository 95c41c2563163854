import { v7 } from 'uuid';
import { localDate } from '../../../shared/costs/days.ts';
import { ofTheFuture } from '../../../shared/submissions/futures.ts';
import type { Subject } from '../../../shared/submissions/envelope.ts';
import { currentSchemaVersion } from '../../../shared/submissions/envelope.ts';
import type { FactKind } from '../../../shared/submissions/kinds.ts';
import type { BodyOf, Fact, Submission } from '../../../shared/submissions/submission.ts';
import type { Role } from '../../../shared/roles.ts';
import { demoMembers, demoUtility } from './utility.ts';

/** One submission of the demo, and who sends it. */
export interface Told {
  readonly role: Role;
  readonly submission: Submission;
}

/**
 * Makes the demo's submissions. Ids come from a seeded generator and times from one given `now`, so that a load cut
 * short can be run again with the same `now`: what had arrived is answered as a repeat.
 */
export class Teller {
  readonly #now: number;
  #state: number;
  readonly told: Told[] = [];

  constructor(now: Date, seed = 1) {
    this.#now = now.getTime();
    this.#state = seed >>> 0;
  }

  /** An instant so many hours before now, whole seconds. */
  hoursAgo(hours: number): string {
    return new Date(Math.floor((this.#now - hours * 3_600_000) / 1000) * 1000).toISOString();
  }

  /** The utility's day so many hours before now: in the evening it is not yet that of UTC. */
  dayAgo(hours: number): string {
    return localDate(this.hoursAgo(hours), demoUtility.timeZone);
  }

  /** A UUIDv7 whose time part is that many hours before now. */
  id(hoursBefore: number): string {
    const random = new Uint8Array(16).map(() => {
      this.#state = (Math.imul(this.#state, 1_664_525) + 1_013_904_223) >>> 0;
      return this.#state >>> 24;
    });
    return v7({ msecs: this.#now - hoursBefore * 3_600_000, seq: this.#state >>> 4, random });
  }

  /** A minute after it was written, or at the last thing that it tells, whichever is later: nobody sends ahead of it. */
  #sentAfter(kind: FactKind, hoursBefore: number, body: unknown): string {
    const written = this.hoursAgo(hoursBefore - 0.02);
    if (kind in ofTheFuture) return written;
    const told = JSON.stringify(body).matchAll(/"(\d{4}-\d{2}-\d{2}T[\d:.]+Z)"/g);
    return [...told].map(([, at = '']) => at).reduce((last, at) => (at > last ? at : last), written);
  }

  /** Tells one fact; answers its submission id. */
  tell<K extends FactKind>(
    kind: K,
    subject: Subject,
    hoursBefore: number,
    body: BodyOf<K>,
    by: { readonly role?: Role; readonly personId?: string; readonly submissionId?: string } = {},
  ): string {
    const role = by.role ?? 'crew';
    const submissionId = by.submissionId ?? this.id(hoursBefore);
    const fact = {
      schemaVersion: currentSchemaVersion,
      submissionId,
      kind,
      subject,
      occurredAt: this.hoursAgo(hoursBefore),
      sentAt: this.#sentAfter(kind, hoursBefore, body),
      person: { personId: by.personId ?? demoMembers[role] },
      device: { deviceId: role === 'crew' ? 'truck-1-phone' : 'office-2' },
      enteredUnits: 'us',
      body,
    } as unknown as Fact;
    this.told.push({ role, submission: fact });
    return submissionId;
  }

  /** Corrects an earlier fact of the demo. */
  correct(
    targetId: string,
    targetKind: FactKind,
    subject: Subject,
    hoursBefore: number,
    reason: string,
    replacement: object | null,
    role: Role = 'crew',
  ): void {
    const target = this.told.find(({ submission }) => submission.submissionId === targetId);
    this.told.push({
      role,
      submission: {
        schemaVersion: currentSchemaVersion,
        submissionId: this.id(hoursBefore),
        kind: 'correction',
        subject,
        occurredAt: target?.submission.occurredAt ?? this.hoursAgo(hoursBefore),
        sentAt: this.#sentAfter(targetKind, hoursBefore, replacement),
        person: { personId: demoMembers[role] },
        device: { deviceId: 'office-2' },
        enteredUnits: 'us',
        body: { targetId, targetKind, reason, replacement: replacement as Record<string, unknown> | null },
      },
    });
  }
}

import { cameraClockMs } from '../cameraClock.ts';
import { rule, when, type AuditCase, type Rule } from '../case.ts';
import { at, bodies, DAY_MS, firstWorkMs, HOUR_MS, yearsBetween } from '../reading.ts';

/** A photo of the event is taken within this of the strike and the return (common practice, no source). */
const NEAR_EVENT_DAYS = 3;
/** How far the camera's clock may be off before it is asked about (common practice, no source). */
const CLOCK_OFF_HOURS = 1;
/** Dry-barrel hydrants are inspected yearly (AWWA M17, NFPA 25 for private ones; from memory). */
const INSPECTION_YEARS = 1;
/** Flow tests every five years (NFPA 291, from memory). */
const FLOW_TEST_YEARS = 5;

const pictures = ({ photos }: AuditCase) =>
  photos.filter(({ exhibit }) => exhibit.mediaType.startsWith('image/'));
const takenMs = ({ exhibit }: AuditCase['photos'][number]): number | null =>
  exhibit.takenAt === null ? null : at(exhibit.takenAt);

/** What was there before, and what the pictures prove. */
export const evidenceRules: readonly Rule[] = [
  rule('no-photo-before-repair', 'documents', (audited) => {
    const began = firstWorkMs(audited);
    return when(
      began !== null &&
        !pictures(audited).some((photo) => (takenMs(photo) ?? Infinity) <= began) &&
        // A photo without a time still proves the damage when it came with the strike's own report; one whose own
        // time is after the work began does not, wherever it was sent.
        !bodies(audited.facts, 'strike').some(({ photos }) => photos.some(({ takenAt }) => takenAt === null)),
      () => ({ atStakeCents: audited.statement.totalCents }),
    );
  }),
  rule('no-scale-in-photos', 'documents', (audited) =>
    when(
      pictures(audited).length > 0 && !pictures(audited).some(({ exhibit }) => exhibit.view === 'scale'),
      () => ({ atStakeCents: 0 }),
    ),
  ),
  rule('photo-far-from-event', 'documents', (audited) => {
    const from = at(audited.strike.since) - HOUR_MS;
    const to = at(audited.strike.returnedAt ?? audited.now) + NEAR_EVENT_DAYS * DAY_MS;
    return pictures(audited).flatMap((photo) => {
      const taken = takenMs(photo);
      return when(taken !== null && (taken < from || taken > to), () => ({
        about: photo.exhibit.sha256.slice(0, 12),
        atStakeCents: 0,
        params: { takenAt: photo.exhibit.takenAt ?? '' },
      }));
    });
  }),
  rule('camera-clock-differs', 'documents', (audited) =>
    pictures(audited).flatMap((photo) => {
      const camera = cameraClockMs(photo.cameraTime, audited.timeZone);
      const taken = takenMs(photo);
      return when(
        camera !== null && taken !== null && Math.abs(camera - taken) > CLOCK_OFF_HOURS * HOUR_MS,
        () => ({
          about: photo.exhibit.sha256.slice(0, 12),
          atStakeCents: 0,
          // Both as instants, so that a reader sees two clocks written alike.
          params: {
            cameraTime: camera === null ? '' : new Date(camera).toISOString(),
            takenAt: photo.exhibit.takenAt ?? '',
          },
        }),
      );
    }),
  ),
  rule('photo-not-arrived', null, ({ photos }) => {
    const missing = photos.filter(({ arrived }) => !arrived).length;
    return when(missing > 0, () => ({ atStakeCents: 0, params: { count: missing } }));
  }),
  rule('no-inspection-before', 'inspection', (audited) => {
    const before = bodies(audited.facts, 'inspection')
      .map(({ inspectedAt }) => inspectedAt)
      .filter((when_) => at(when_) < at(audited.strike.since))
      .sort();
    const last = before.at(-1);
    return when(last === undefined || yearsBetween(last, audited.strike.since) >= INSPECTION_YEARS, () => ({
      atStakeCents: audited.statement.totalCents,
      params: { known: last === undefined ? 'no' : 'yes', last: last ?? '' },
    }));
  }),
  rule('no-flow-test-before', 'flow-test', (audited) => {
    const before = bodies(audited.facts, 'flow-test')
      .map(({ testedAt }) => testedAt)
      .filter((when_) => at(when_) < at(audited.strike.since))
      .sort();
    const last = before.at(-1);
    return when(last === undefined || yearsBetween(last, audited.strike.since) >= FLOW_TEST_YEARS, () => ({
      atStakeCents: 0,
      params: { known: last === undefined ? 'no' : 'yes', last: last ?? '' },
    }));
  }),
  rule('no-findings-recorded', 'strike', ({ facts, statement }) =>
    when(
      bodies(facts, 'strike').every(({ found }) => found === null),
      () => ({ atStakeCents: statement.totalCents }),
    ),
  ),
];

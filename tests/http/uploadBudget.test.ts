import { beforeEach, describe, expect, it } from 'vitest';
import { createEvidenceApp } from '../../functions/evidence/app.ts';
import type { Exhibit } from '../../shared/submissions/fields.ts';
import { fact, onStrike } from '../support/submissions.ts';
import { testWorld, type World } from './support/world.ts';

let world: World;
let now: Date;
const hash = (number: number): string => number.toString(16).padEnd(64, '0');
const photo = (number: number): Exhibit => ({
  sha256: hash(number),
  bytes: 1_000_000,
  mediaType: 'image/jpeg',
  takenAt: null,
  view: 'overall',
  caption: null,
});
const strike = fact('strike', 1, onStrike(1), { photos: [1, 2, 3].map(photo) });

beforeEach(async () => {
  // 18:00 in Chicago, the utility's zone: six hours to midnight.
  now = new Date('2026-03-05T00:00:00Z');
  world = await testWorld({ now: () => now });
  const settings = { ...world.deps.settings, timeZone: 'America/Chicago' };
  world.apps.evidence = createEvidenceApp({
    ...world.deps,
    settings: { ...settings, uploadsPerPersonDay: { files: 2, megabytes: 100 } },
  });
  expect((await world.submit('crew', strike)).status).toBe(201);
});
const ask = (role: 'crew' | 'manager', number: number) =>
  world.ask('/api/evidence/uploads', role, {
    body: { subject: strike.subject, submissionId: strike.submissionId, sha256: hash(number) },
  });

describe('one person’s uploads of a day', () => {
  it('end with a 429 that says how much was sent, how much may be, and when to go on', async () => {
    expect([(await ask('crew', 1)).status, (await ask('crew', 2)).status]).toEqual([200, 200]);
    const over = await ask('crew', 3);
    expect(over).toMatchObject({
      status: 429,
      body: {
        type: '/problems/too-many',
        problems: [
          { code: 'upload-budget', path: 'sha256', params: { files: 2, megabytes: 2, mostFiles: 2 } },
        ],
      },
    });
    expect(over.headers.get('content-type')).toBe('application/problem+json');
    expect(over.headers.get('retry-after')).toBe(String(6 * 3600));
    expect(over.body.problems[0]!.message).toContain('Send the rest after midnight');
  });

  it('hold up no report, no colleague, and no file that was counted before', async () => {
    for (const number of [1, 2, 3]) await ask('crew', number);
    expect((await ask('crew', 2)).status).toBe(200);
    expect((await ask('manager', 3)).status).toBe(200);
    expect((await world.submit('crew', fact('strike', 2, onStrike(2), { photos: [photo(4)] }))).status).toBe(
      201,
    );
  });

  it('begin again at the utility’s midnight', async () => {
    for (const number of [1, 2, 3]) await ask('crew', number);
    now = new Date('2026-03-05T05:59:59Z');
    expect((await ask('crew', 3)).status).toBe(429);
    now = new Date('2026-03-05T06:00:00Z');
    expect((await ask('crew', 3)).status).toBe(200);
  });

  it('leave lines that alarms count, of bytes and of who was held back, with nobody’s name', async () => {
    for (const number of [1, 1, 2, 3]) await ask('crew', number);
    expect(world.logged).toEqual([
      { level: 'info', event: 'upload-allowed', bytes: 1_000_000 },
      { level: 'info', event: 'upload-allowed', bytes: 1_000_000 },
      { level: 'warn', event: 'upload-held-back' },
    ]);
  });
});

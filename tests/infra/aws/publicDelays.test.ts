import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PAGE_CACHE } from '../../../functions/publish/pages.ts';
import { example, resourcesOf, synthesise } from './synthesised.ts';

/** From an accepted report to the public page: what docs/public-pages.md says of AWS, held against the stack. */
const page = readFileSync(join(import.meta.dirname, '..', '..', '..', 'docs', 'public-pages.md'), 'utf8');
/** The column of AWS in the row of a step. */
const onAws = (step: string): string => {
  const row = page.split('\n').find((line) => line.startsWith(`| ${step} |`));
  return row?.split('|')[3]?.trim() ?? `no row "${step}"`;
};

const byId = resourcesOf(synthesise().service);
const resources = Object.values(byId);
const ofType = (type: string) =>
  resources.flatMap(({ Type, Properties }) => (Type === type ? [Properties] : []));
const following = (name: string) =>
  ofType('AWS::Lambda::EventSourceMapping').find(({ FunctionName }) =>
    JSON.stringify(FunctionName).includes(`Function${name}Handler`),
  )!;

describe('the delays of the public page', () => {
  it('an accepted fact wakes the projector at once: its stream gathers nothing', () => {
    expect(onAws('accepted → projected')).toContain('under a second');
    expect(following('project')['MaximumBatchingWindowInSeconds'] ?? 0).toBe(0);
  });

  it('changes are gathered before the publisher starts, for as long as the page says', () => {
    const [, seconds] = /for up to (\d+) s/.exec(onAws('projected → publisher starts')) ?? [];
    expect(following('publish')['MaximumBatchingWindowInSeconds']).toBe(Number(seconds));
    // A publication that is under way must not hold up every change behind a batch of one.
    expect(following('publish')['BatchSize']).toBeGreaterThanOrEqual(1000);
  });

  it('caches keep a page for as long as it says of itself, and the edge no longer than the page says', () => {
    const [, own, most] = /(\d+) s by .* at most (\d+) s/.exec(onAws('caches')) ?? [];
    expect(PAGE_CACHE).toContain(`max-age=${own},`);
    const [policy, ...others] = ofType('AWS::CloudFront::CachePolicy').map((one) => one['CachePolicyConfig']);
    expect(others).toEqual([]);
    expect(policy).toMatchObject({ MinTTL: 0, DefaultTTL: Number(own), MaxTTL: Number(most) });
  });

  it('a publication ends before the next regular one is due, or is cut off and rings', () => {
    const { everyMinutes } = example().utility.publishing;
    const [, publish] = Object.entries(byId).find(([id]) => id.startsWith('FunctionpublishHandler'))!;
    expect(publish.Properties['Timeout']).toBeLessThanOrEqual(everyMinutes * 60);
    expect(ofType('AWS::Events::Rule').map(({ ScheduleExpression }) => ScheduleExpression)).toContain(
      `rate(${everyMinutes} minutes)`,
    );
  });
});

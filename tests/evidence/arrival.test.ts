import { describe, expect, it } from 'vitest';
import { arrivalOf, originalIn } from '../../functions/display/arrived.ts';
import { evidenceKey, originalOf } from '../../functions/stores/evidence/byHash.ts';
import { copyKey } from '../../functions/stores/evidence/copies.ts';
import type { LogEntry } from '../../functions/log/log.ts';
import { createArrivals } from '../../infra/local/arrivals.ts';

const hash = 'ab'.repeat(32);
/** The example of the Amazon S3 user guide ("EventBridge event message structure"), with a key of ours. */
const recorded = (key: string, size = 2_048_576) => ({
  version: '0',
  id: '17793124-05d4-b198-2fde-7ededc63b103',
  'detail-type': 'Object Created',
  source: 'aws.s3',
  account: '111122223333',
  time: '2021-11-12T00:00:00Z',
  region: 'ca-central-1',
  resources: ['arn:aws:s3:::amzn-s3-demo-bucket1'],
  detail: {
    version: '0',
    bucket: { name: 'amzn-s3-demo-bucket1' },
    object: {
      key,
      size,
      etag: 'b1946ac92492d2347c6235b4d2611184',
      'version-id': 'IYV3p45BT0ac8hjHg1houSdS1a.Mro8e',
      sequencer: '617f08299329d189',
    },
    'request-id': 'N4N7GDK58NMKJ12R',
    requester: '123456789012',
    'source-ip-address': '1.2.3.4',
    reason: 'PutObject',
  },
});

describe('the event of an arrival', () => {
  it('names the original, in a bucket of its own or under a prefix', () => {
    const known = { sha256: hash, bytes: 2_048_576 };
    expect(originalIn(recorded(evidenceKey(hash)), 's3://evidence/')).toEqual(known);
    expect(originalIn(recorded(`stage/e/${evidenceKey(hash)}`), 's3://evidence/stage/e/')).toEqual(known);
    expect(originalIn(arrivalOf(evidenceKey(hash)), 'file:///data/evidence')).toEqual({
      sha256: hash,
      bytes: null,
    });
  });

  it.each([
    ['a copy', copyKey(hash)],
    ['a copy’s record', copyKey(hash).replace('.jpg', '.json')],
    ['a hash in another’s folder', `cd/${hash}`],
    ['no hash', 'ab/readme.txt'],
    ['a way out', `../ab/${hash}`],
    ['what stands outside the prefix', `other/${evidenceKey(hash)}`],
  ])('of %s is passed over, so that no copy makes a copy', (_, key) => {
    expect(originalIn(recorded(key), 's3://evidence/')).toBeNull();
    expect(originalOf(key)).toBeNull();
  });

  it('of another sort is refused', () => {
    expect(() =>
      originalIn({ ...recorded(evidenceKey(hash)), 'detail-type': 'Object Deleted' }, 's3://e/'),
    ).toThrow();
    expect(() => originalIn({ Records: [] }, 's3://e/')).toThrow();
  });
});

describe('on one machine', () => {
  it('each arrival is handed on as the store’s event, one at a time; a failure is logged and stops nothing', async () => {
    const seen: unknown[] = [];
    const logged: LogEntry[] = [];
    let running = 0;
    const arrivals = createArrivals(
      async () => async (event) => {
        running += 1;
        expect(running).toBe(1);
        await new Promise((resolve) => setTimeout(resolve, 2));
        running -= 1;
        seen.push(event);
        if (seen.length === 2) throw new Error('the store is away');
      },
      (entry) => void logged.push(entry),
    );
    for (const key of ['aa/1', 'bb/2', 'cc/3']) arrivals.arrived(key);
    await arrivals.settled();
    expect(seen).toEqual(['aa/1', 'bb/2', 'cc/3'].map(arrivalOf));
    expect(logged).toMatchObject([{ level: 'error', event: 'display-copy-failed' }]);
    await arrivals.stop();
    arrivals.arrived('dd/4');
    await arrivals.settled();
    expect(seen).toHaveLength(3);
  });
});

import { expect, it } from 'vitest';
import { importStores, namedStore } from '../../infra/local/import/stores.ts';
import { RefusedStart } from '../../infra/local/refusedStart.ts';
import { say } from '../../shared/words/index.ts';

const there = { DEPLOYMENT_URL: 'https://hydrants.example' };
const bucket = { INVENTORY_URL: 's3://bucket/' };

/** What the terminal says when it is refused. */
function refusal(start: () => unknown): string {
  try {
    start();
  } catch (error) {
    if (error instanceof RefusedStart) return say('en', error.key, error.params);
    throw error;
  }
  throw new Error('not refused');
}

it('finds a store by its name in the environment, else on this machine', () => {
  expect(namedStore({ ...there, ...bucket }, 'INVENTORY_URL')).toBe('s3://bucket/');
  expect(namedStore(bucket, 'INVENTORY_URL')).toBe('s3://bucket/');
  expect(namedStore({}, 'NETWORK_URL')).toBeNull();
  expect(namedStore({ NETWORK_URL: '' }, 'NETWORK_URL')).toBeNull();
});

it('loads nothing here that was meant for a deployment, whichever half of its address is missing', () => {
  expect(refusal(() => namedStore({ ...there, ...bucket }, 'NETWORK_URL'))).toMatch(
    /^Set NETWORK_URL as well/,
  );
  expect(refusal(() => importStores(there))).toMatch(/^Set INVENTORY_URL as well/);
  expect(refusal(() => importStores(bucket))).toBe(
    'INVENTORY_URL is set and DEPLOYMENT_URL is not. Set both to load into a deployment, or neither for this machine.',
  );
});

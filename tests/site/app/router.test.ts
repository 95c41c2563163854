import { expect, test } from 'vitest';
import { readRoute } from '../../../site/src/app/core/router.ts';

/** RFC 3986, 2.1: a percent sign stands before two hexadecimal digits; what a person types or a code holds may not. */
test('an address that is not one is read as it stands, and stops no screen', () => {
  expect(readRoute('#/hydrant/50%').parts).toEqual(['hydrant', '50%']);
  expect(readRoute('#/hydrant/%C3%28?then=strike').parts).toEqual(['hydrant', '%C3%28']);
  expect(readRoute('#/hydrant/A%2F1').parts).toEqual(['hydrant', 'A/1']);
});

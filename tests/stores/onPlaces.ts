import { afterAll, beforeAll, describe, it } from 'vitest';
import { places, type OpenedStores } from '../support/stores.ts';

/** The same tests wherever the stores can stand; a place that is not at hand is told as one skipped test, with the reason. */
export function describeOnPlaces(what: string, tests: (opened: () => OpenedStores) => void): void {
  describe.each(places)(`${what} on $name`, ({ absent, open }) => {
    if (absent !== null) {
      it.skip(`not run: ${absent}`, () => undefined);
      return;
    }
    let opened: OpenedStores;
    beforeAll(async () => {
      opened = await open();
    });
    afterAll(() => opened.close());
    tests(() => opened);
  });
}

import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What has the focus, as somebody who cannot point at it would name it. */
interface Focused {
  /** Its name as far as it is written down: id, the groups it stands in, text, label. */
  readonly text: string;
  /** The page itself: a focus that was lost. */
  readonly lost: boolean;
  /** An outline is drawn round it or round its label, and it is on screen with nothing over it. */
  readonly seen: boolean;
}

const focused = (page: Page): Promise<Focused> =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!(at instanceof HTMLElement) || at === document.body) return { text: '', lost: true, seen: false };
    const labels = at instanceof HTMLInputElement ? [...(at.labels ?? [])] : [];
    const shown = [at, ...labels];
    const outlined = shown.some((element) =>
      [element, ...element.querySelectorAll('*')].some(
        (part) => getComputedStyle(part).outlineStyle === 'solid',
      ),
    );
    // The browser itself marks the part of a date that has the focus, its calendar button too.
    const ownMark = at instanceof HTMLInputElement && at.type === 'datetime-local';
    const uncovered = shown.some((element) => {
      const box = element.getBoundingClientRect();
      const top = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
      return top !== null && (element.contains(top) || top.contains(element));
    });
    // As a screen reader names it: the groups it stands in, from the outermost, and then itself.
    const groups: string[] = [];
    for (
      let around = at.parentElement?.closest('fieldset, [role=group], [role=radiogroup]');
      around;
      around = around.parentElement?.closest('fieldset, [role=group], [role=radiogroup]')
    ) {
      const labelledBy = around.getAttribute('aria-labelledby');
      const named =
        around.getAttribute('aria-label') ??
        (labelledBy === null ? around.querySelector(':scope > legend') : document.getElementById(labelledBy))
          ?.textContent;
      groups.unshift(named?.trim() ?? '');
    }
    return {
      text: [
        at.id,
        at.getAttribute('aria-label'),
        ...groups,
        at.textContent,
        ...labels.map((label) => label.textContent),
      ]
        .filter(Boolean)
        .join(' | '),
      lost: false,
      seen: (outlined || ownMark) && uncovered,
    };
  });

/** More controls than any form has: a focus that has not come by then is in a trap. */
const MOST_TABS = 300;

/**
 * Tabs on, or back, until what is wanted has the focus. On the way it is always on something, and where it is can be
 * seen; past the last control it goes through the browser's own, which here is the page.
 */
export async function tabTo(
  page: Page,
  wanted: string | RegExp,
  key: 'Tab' | 'Shift+Tab' = 'Tab',
): Promise<void> {
  const unseen: string[] = [];
  let wrapped = 0;
  for (let step = 0; step < MOST_TABS && wrapped < 2; step += 1) {
    await page.keyboard.press(key);
    let { text, lost, seen } = await focused(page);
    // A page that is scrolled to what has the focus is there a few frames later.
    for (let look = 0; look < 10 && !lost && !seen; look += 1) {
      await page.waitForTimeout(30);
      ({ text, lost, seen } = await focused(page));
    }
    if (lost) wrapped += 1;
    else if (!seen) unseen.push(text.slice(0, 80));
    if (!lost && (typeof wanted === 'string' ? text.includes(wanted) : wanted.test(text))) {
      expect(unseen, 'had the focus and did not show it').toEqual([]);
      return;
    }
  }
  throw new Error(`the keyboard never came to ${String(wanted)}`);
}

/** Puts the focus there and presses a button or follows a link. */
export async function pressOn(page: Page, wanted: string | RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, wanted);
  await page.keyboard.press(key);
}

/** Goes to a field and types over what it holds. */
export async function typeInto(page: Page, wanted: string | RegExp, text: string): Promise<void> {
  await tabTo(page, wanted);
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.type(text);
}

/** After the screen changed, the focus is on something of it and not lost to the page. */
export async function expectFocusKept(page: Page): Promise<void> {
  await expect.poll(async () => (await focused(page)).lost).toBe(false);
}

import type { Page } from 'playwright-core';

/**
 * The camera and the browser's reader of codes, faked in the page: no machine here has a camera, and this Chromium has no
 * reader. What the page does with them is real: when it asks, what it stops, what it makes of a code.
 */
export async function withCamera(page: Page, options: { readonly deny?: boolean } = {}): Promise<void> {
  await page.addInitScript((deny: boolean) => {
    const seen = { asked: 0, stopped: 0, codes: [] as string[] };
    Object.assign(window, { seen });
    class Reader {
      static getSupportedFormats(): Promise<string[]> {
        return Promise.resolve(['qr_code', 'data_matrix', 'code_128']);
      }
      detect(): Promise<{ rawValue: string }[]> {
        return Promise.resolve(seen.codes.splice(0).map((rawValue) => ({ rawValue })));
      }
    }
    Object.assign(window, { BarcodeDetector: Reader });
    Object.defineProperty(navigator, 'mediaDevices', {
      value: {
        getUserMedia: () => {
          seen.asked += 1;
          if (deny) return Promise.reject(new DOMException('not allowed', 'NotAllowedError'));
          const canvas = document.createElement('canvas');
          const context = canvas.getContext('2d');
          const draw = (): void => context?.fillRect(Math.random() * 50, 0, 40, 40);
          draw();
          setInterval(draw, 50);
          const stream = canvas.captureStream(20);
          for (const track of stream.getTracks()) {
            const stop = track.stop.bind(track);
            track.stop = () => {
              seen.stopped += 1;
              stop();
            };
          }
          return Promise.resolve(stream);
        },
      },
    });
  }, options.deny ?? false);
}
export interface Seen {
  readonly asked: number;
  readonly stopped: number;
  readonly codes: string[];
}

export const seenBy = (page: Page): Promise<Seen> =>
  page.evaluate(() => (window as unknown as { seen: Seen }).seen);

export const hold = (page: Page, code: string): Promise<void> =>
  page.evaluate((text) => void (window as unknown as { seen: Seen }).seen.codes.push(text), code);

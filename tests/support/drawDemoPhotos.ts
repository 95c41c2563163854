/**
 * Draws the demo's photos: tests/support/drawDemoPhotos.ts. Run by hand when a drawing changes; the JPEGs are kept
 * in the repository so that a demo needs no browser. Drawn, because a demo shows no photograph of any place or person.
 */
import { writeFileSync } from 'node:fs';
import { launchBrowser } from './browser.ts';
import { scenes, svgOf } from '../../infra/local/demo/photos/scenes.ts';

const browser = await launchBrowser();
try {
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
  for (const [name, scene] of Object.entries(scenes)) {
    await page.setContent(`<style>*{margin:0}svg{display:block}</style>${svgOf(scene)}`);
    const bytes = await page.screenshot({ type: 'jpeg', quality: 72 });
    writeFileSync(new URL(`../../infra/local/demo/photos/${name}.jpg`, import.meta.url), bytes);
    process.stdout.write(`${name}.jpg ${bytes.length} bytes\n`);
  }
} finally {
  await browser.close();
}

import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { faultsOf, launchOn, type Looking } from './browser.ts';

export interface Device {
  /** Opens its browser on what the device has kept. */
  readonly open: () => Promise<DeviceScreen>;
  /** Ends its browsers and forgets what it kept. */
  readonly end: () => Promise<void>;
}

export interface DeviceScreen extends Looking {
  /** SIGKILL, as when the battery is empty. */
  readonly kill: () => Promise<void>;
}

/** A phone of its own, whose browser can be killed in the middle and opened again. */
export async function newDevice(): Promise<Device> {
  const profile = await mkdtemp(join(tmpdir(), 'hsl-profile-'));
  const kills: (() => Promise<void>)[] = [];
  return {
    async open() {
      const { context, kill } = await launchOn(profile);
      kills.push(kill);
      const faults = faultsOf(context);
      const page = await context.newPage();
      page.setDefaultTimeout(10_000);
      await page.setViewportSize({ width: 360, height: 740 });
      return { page, faults, kill, close: kill };
    },
    async end() {
      for (const kill of kills) await kill();
      // Its helpers may write for a moment more.
      await rm(profile, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}

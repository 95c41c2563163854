import type { UtilitySettings } from '../utility/settings.ts';
import type { Locale } from '../words/index.ts';
import type { NoticeReader } from './text.ts';

/** How a message is written for somebody who reads this language. */
export const readerFor = (settings: UtilitySettings, locale: Locale): NoticeReader => ({
  locale,
  system: settings.units,
  timeZone: settings.timeZone,
  utilityName: settings.name,
  callBack: settings.dispatchMessages?.callBack ?? settings.emergencyPhone,
  publicUrl: settings.publicUrl,
  textSegments: settings.dispatchMessages?.textSegments ?? 2,
});

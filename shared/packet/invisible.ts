/**
 * Signs that show nothing by themselves: controls other than tab and line feed, joiners and marks of direction, soft
 * hyphens, byte order marks, variation selectors (Unicode categories Cc and Cf, and VS1 to VS16).
 */
const invisible = /[^\P{Cc}\t\n]|[\p{Cf}\ufe00-\ufe0f]/gu;

/** A text as paper shows it: what nobody sees there is neither drawn nor compared, and turns no word around. */
export const withoutInvisible = (text: string): string => text.replace(invisible, '');

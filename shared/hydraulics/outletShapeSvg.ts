import { say, type Locale } from '../words/index.ts';
import type { OutletShape } from './outletShapes.ts';

/**
 * Each outlet cut through the middle, barrel to the left, water flowing to the right: what a finger feels on the edge
 * inside. Upper half as drawn; the lower half is its mirror.
 */
const edges: Readonly<Record<OutletShape['id'], string>> = {
  rounded: 'M44 4V14Q44 30 60 30H116',
  square: 'M44 4V30H116',
  projecting: 'M44 4V30M22 30H116',
};

/**
 * A picture of an outlet's shape as one SVG element, in one ink. Named for a screen reader, unless its name already
 * stands beside it (`decorative`).
 */
export function outletShapeSvg(
  { id, coefficient }: OutletShape,
  {
    locale,
    idPrefix,
    decorative = false,
  }: { readonly locale: Locale; readonly idPrefix: string; readonly decorative?: boolean },
): string {
  const title = say(locale, 'hydraulics.shape.picture', {
    shape: say(locale, `hydraulics.shape.${id}`),
    coefficient: coefficient.toFixed(2),
  });
  const line = 'fill="none" stroke="currentColor" stroke-width="4" stroke-linejoin="round"';
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 100" class="outlet-shape"',
    decorative
      ? ' aria-hidden="true">'
      : ` role="img" aria-labelledby="${idPrefix}-${id}-title"><title id="${idPrefix}-${id}-title">${title}</title>`,
    `<path d="${edges[id]}" ${line}/>`,
    `<path d="${edges[id]}" ${line} transform="matrix(1 0 0 -1 0 100)"/>`,
    '<path d="M8 50H96m-10 -6l10 6l-10 6" fill="none" stroke="currentColor" stroke-width="1.5"/>',
    '</svg>',
  ].join('');
}

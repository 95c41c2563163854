import { say, type Locale } from '../words/index.ts';
import type { PacketContent } from './schema.ts';

/** A file of the claim that a packet lists without showing it, and why. */
export type LeftOut =
  | {
      readonly is: 'photo';
      readonly number: number;
      readonly view: string;
      readonly caption: string | null;
      readonly mediaType: string;
      readonly reason: string;
    }
  | {
      readonly is: 'paper';
      readonly what: string;
      readonly title: string;
      readonly paperNumber: string | null;
      readonly mediaType: string;
      readonly reason: string;
    };

/** Every file that this packet lists without its picture or pages, as its own lists have it. */
export function leftOutOf({ photos, papers }: Pick<PacketContent, 'photos' | 'papers'>): LeftOut[] {
  return [
    ...photos.flatMap(({ state, view, caption, mediaType }, index): LeftOut[] =>
      state.code === 'included'
        ? []
        : [{ is: 'photo', number: index + 1, view, caption, mediaType, reason: reasonOf(state) }],
    ),
    ...papers.flatMap(({ state, what, title, number, mediaType }): LeftOut[] =>
      state.code === 'not-included' || state.code === 'awaited'
        ? [{ is: 'paper', what, title, paperNumber: number, mediaType, reason: reasonOf(state) }]
        : [],
    ),
  ];
}

const reasonOf = (state: { readonly code: string; readonly reason?: string }): string =>
  state.reason ?? state.code;

/** In the packet's own words, so that the desk and the packet say the same. */
export function sayLeftOut(locale: Locale, item: LeftOut): string {
  const why = say(locale, `packet.${item.is}.${item.reason}`, { mediaType: item.mediaType });
  const title =
    item.is === 'photo'
      ? say(locale, 'packet.photo.title', {
          number: item.number,
          view: say(locale, `value.view.${item.view}`),
          caption: item.caption ?? '',
          hasCaption: item.caption === null ? 'no' : 'yes',
        })
      : say(locale, 'packet.paper.title', {
          what: say(locale, `value.document.${item.what}`),
          title: item.title,
          number: item.paperNumber ?? '',
          hasNumber: item.paperNumber === null ? 'no' : 'yes',
        });
  return `${title}. ${why}`;
}

import { freshness } from '../../../../shared/public/freshness.ts';
import type { Near, NearOut } from '../../../../shared/public/nearPoint.ts';
import { convert } from '../../../../shared/units/convert.ts';
import type { NearAnswer } from './lists.ts';
import type { Words } from './words.ts';

/** Where the point came from. With the radius that the device claims, metres, where it was the device. */
export type Origin = { readonly from: 'device'; readonly accuracyM: number } | { readonly from: 'map' };

/** Beyond this a device cannot say which of two hydrants on one block is the nearer. */
const COARSE_FT = 300;
/** Those to be passed by that are named: the list of hydrants out of service has them all. */
const MOST_PASSED = 5;

function element(name: string, className: string, ...children: readonly (Node | string)[]): HTMLElement {
  const made = document.createElement(name);
  if (className !== '') made.className = className;
  made.append(...children);
  return made;
}

/** Class, rated flow, when tested: as the lists that the publisher writes. */
function ratingOf(
  { hydrantClass, ratedFlowGpm, testedOn }: Near,
  words: Words,
  classes: HTMLTemplateElement,
): HTMLElement {
  const mark = classes.content.querySelector(`[data-class="${hydrantClass ?? 'none'}"]`)?.firstElementChild;
  const facts = [
    ...(ratedFlowGpm === null ? [] : [words.say('flow', { flow: words.flow(ratedFlowGpm) })]),
    ...(testedOn !== null
      ? [words.say('tested', { date: words.date(testedOn) })]
      : hydrantClass !== null
        ? [words.say('untested')]
        : []),
  ];
  return element(
    'span',
    'rating',
    ...(mark ? [mark.cloneNode(true)] : []),
    ...facts.map((fact) => ` · ${fact}`),
  );
}

const spaced = (parts: readonly (Node | string)[]): readonly (Node | string)[] =>
  parts.flatMap((part, index) => (index === 0 ? [part] : [' ', part]));

/** A hydrant with how far it is, and below it what else is known. */
function item(
  hydrantId: string,
  { distanceFt, bearing }: Pick<Near, 'distanceFt' | 'bearing'>,
  words: Words,
  more: readonly Node[],
): HTMLElement {
  const id = document.createElement('bdi');
  id.textContent = hydrantId;
  return element(
    'li',
    '',
    ...spaced([
      element('span', 'nearest-id', id),
      element('span', 'nearest-away', words.away(distanceFt, bearing)),
      element('span', 'nearest-more', ...spaced(more)),
    ]),
  );
}

const placeOf = ({ place }: Pick<Near, 'place'>): readonly Node[] =>
  place === null ? [] : [element('span', '', place)];

const inServiceItem = (near: Near, words: Words, classes: HTMLTemplateElement): HTMLElement =>
  item(near.hydrantId, near, words, [
    ...placeOf(near),
    ratingOf(near, words, classes),
    ...(near.private === true ? [element('span', 'tag', words.say('private'))] : []),
    ...(near.maybeStruck ? [element('span', 'tag owing', words.say('maybe-struck'))] : []),
    ...(near.notRetested ? [element('span', 'tag owing', words.say('not-retested'))] : []),
  ]);

const outItem = (out: NearOut, words: Words, checkedAt: string): HTMLElement =>
  item(out.hydrantId ?? words.say('unknown-hydrant'), out, words, [
    element('strong', '', words.say('out-since', { since: words.instant(out.since, checkedAt) })),
    ...placeOf(out),
    element('span', '', words.say(`cause.${out.cause}`)),
  ]);

export interface Told {
  /** What a screen reader is told at once, and everyone sees first. */
  readonly summary: string;
  /** What must be known before the list is used; empty when nothing speaks against it. */
  readonly warnings: readonly string[];
  readonly parts: readonly HTMLElement[];
}

/** The answer in words: how sure it is, what is nearest, and what must be passed by on the way. */
export function tell(
  answer: NearAnswer,
  origin: Origin,
  now: Date,
  words: Words,
  classes: HTMLTemplateElement,
): Told {
  const { index, inService, out, fromBefore } = answer;
  const times = {
    checked: words.instant(index.checkedAt, index.checkedAt),
    until: words.instant(index.relyUntil, index.checkedAt),
  };
  const state = freshness(now, index);
  const accuracyFt = origin.from === 'device' ? convert(origin.accuracyM, 'm', 'ft') : 0;
  const warnings = [
    ...(state === 'old' ? [words.say('old', times)] : []),
    ...(state === 'early' ? [words.say('early', times)] : []),
    ...(index.notYetShown
      ? [words.say('behind', { since: words.instant(index.notYetShown.since, index.checkedAt) })]
      : []),
    ...(fromBefore && state === 'good' ? [words.say('from-before', times)] : []),
    ...(accuracyFt > COARSE_FT ? [words.say('coarse', { distance: words.distance(accuracyFt) })] : []),
  ];
  const [first] = inService;
  const parts = [
    element('h3', '', words.say(origin.from === 'device' ? 'here' : 'at-point')),
    element('p', 'times', words.say('times', times)),
    ...(origin.from === 'device' && accuracyFt <= COARSE_FT
      ? [element('p', 'soft', words.say('accuracy', { distance: words.distance(Math.max(accuracyFt, 10)) }))]
      : []),
    element('p', 'soft', words.say('line')),
    ...(first
      ? [element('ol', 'nearest numbered', ...inService.map((near) => inServiceItem(near, words, classes)))]
      : []),
    ...(out.length > 0
      ? [
          element('h4', '', words.say('passed')),
          element(
            'ul',
            'nearest passed',
            ...out.slice(0, MOST_PASSED).map((one) => outItem(one, words, index.checkedAt)),
          ),
        ]
      : []),
  ];
  return {
    summary: first
      ? words.say('found', { hydrant: first.hydrantId, away: words.away(first.distanceFt, first.bearing) })
      : words.say('none'),
    warnings,
    parts,
  };
}

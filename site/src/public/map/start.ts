import { project, unproject, type Projection } from '../../../../shared/public/mapFrame.ts';
import { cellBounds } from '../../../../shared/public/cellTree.ts';
import type { PublicPosition } from '../../../../shared/public/snapshot.ts';
import { locate } from '../../app/core/locate.ts';
import { tell, type Origin } from './answer.ts';
import { takeInHand } from './drawing.ts';
import { listen, STEP_FACTOR, STEP_PX } from './gestures.ts';
import { Lists } from './lists.ts';
import { ListUnread } from './published.ts';
import { streets } from './tiles.ts';
import { around, dragged, toWorld, whole, zoomed, type Size, type View } from './view.ts';
import { wordsIn } from './words.ts';

/**
 * Makes the map that the page came with movable, and finds the hydrants nearest to a point. The point stays in this
 * module's memory: it is in no address, no storage and no request.
 */
const one = <T extends HTMLElement | SVGElement = HTMLElement>(selector: string): T => {
  const found = document.querySelector<T>(selector);
  if (!found) throw new Error(`the page has no ${selector}`);
  return found;
};
const numberOf = (element: SVGElement | HTMLElement, name: string): number => Number(element.dataset[name]);

const svg = one<SVGSVGElement>('.town-map > .map-box > svg');
const box = one('.map-box');
const status = one('[data-near-status]');
const result = one('[data-near-result]');
const classes = one<HTMLTemplateElement & HTMLElement>('#map-classes');
const words = wordsIn(one<HTMLTemplateElement & HTMLElement>('#map-words'));

const projection: Projection = {
  middle: { latitudeDeg: numberOf(svg, 'latitude'), longitudeDeg: numberOf(svg, 'longitude') },
  x: numberOf(svg, 'middleX'),
  y: numberOf(svg, 'middleY'),
  perDegreeEast: numberOf(svg, 'perDegreeEast'),
  perDegreeSouth: numberOf(svg, 'perDegreeSouth'),
};
const feetPerUnit = numberOf(svg, 'feetPerUnit');
/** Nearer than half a foot a pixel there is nothing to see. */
const world = { width: numberOf(svg, 'width'), height: numberOf(svg, 'height'), mostScale: feetPerUnit * 2 };

const lists = new Lists();
const drawing = takeInHand(svg, { projection, feetPerUnit, system: words.system, distance: words.distance });
let picture: Size = { width: 1, height: 1 };
let view: View = whole(world, { width: world.width, height: world.height });
let asked = 0;

// ---- streets, where the utility has set a source

const streetsBox = document.querySelector<HTMLInputElement>('[data-streets]');
const streetLayer = streetsBox
  ? streets(
      one<SVGGElement>('[data-layer="tiles"]'),
      { url: streetsBox.dataset['url'] ?? '', maxzoom: Number(streetsBox.dataset['maxzoom'] ?? 18) },
      projection,
      () => {
        one('[data-streets-status]').textContent = words.say('streets-failed');
      },
    )
  : null;
const showStreets = (on: boolean): void => {
  if (!streetsBox || !streetLayer) return;
  streetsBox.checked = on;
  svg.classList.toggle('with-streets', on);
  one('[data-streets-by]').hidden = !on;
  one('[data-streets-status]').textContent = '';
  if (!on) streetLayer.clear();
};

// ---- drawing

/** So many cells in view are worth their bytes; with more the page's own dots say enough. */
const MOST_CELLS = 4;

/** Exact places once the view is small, from lists that are read when it comes to rest. */
async function sharpen(): Promise<void> {
  const own = ++asked;
  // In the whole view every dot is as exact as the eye.
  if (view.scale < 2 * whole(world, picture).scale) {
    drawing.setCells([]);
    return;
  }
  await lists.begin();
  const [northWest, southEast] = [
    unproject(projection, toWorld(view, { x: 0, y: 0 }, picture)),
    unproject(projection, toWorld(view, { x: picture.width, y: picture.height }, picture)),
  ];
  const seen = lists.names.filter((name) => {
    const { south, north, west, east } = cellBounds(name);
    return (
      south <= northWest.latitudeDeg &&
      north >= southEast.latitudeDeg &&
      west <= southEast.longitudeDeg &&
      east >= northWest.longitudeDeg
    );
  });
  if (seen.length <= MOST_CELLS) await lists.readCells(seen);
  if (own !== asked) return;
  const read = lists.read;
  drawing.setCells(seen.length <= MOST_CELLS ? seen.flatMap((name) => read.get(name) ?? []) : []);
}

let resting: ReturnType<typeof setTimeout> | undefined;
let waiting = false;

function draw(): void {
  waiting = false;
  drawing.show(view, picture);
  if (streetsBox?.checked) streetLayer?.show(view, picture);
}
function changed(next: View): void {
  view = next;
  if (!waiting) requestAnimationFrame(draw);
  waiting = true;
  clearTimeout(resting);
  resting = setTimeout(() => {
    // What the page came with is drawn all the same: a list that cannot be read takes nothing away.
    void sharpen().then(draw, (error: unknown) => {
      if (!(error instanceof ListUnread)) throw error;
    });
  }, 250);
}

// ---- what is near

const problemKey = { unreachable: 'unreachable', broken: 'broken', renewed: 'renewed' } as const;

function report(...lines: readonly (readonly [text: string, isWarning: boolean])[]): void {
  status.replaceChildren(
    ...lines.map(([text, isWarning]) => {
      const line = document.createElement('p');
      line.textContent = text;
      if (isWarning) line.className = 'warning';
      return line;
    }),
  );
}

async function findNear(point: PublicPosition, origin: Origin): Promise<void> {
  report([words.say('reading'), false]);
  result.replaceChildren();
  try {
    const answer = await lists.near(point);
    const told = tell(answer, origin, new Date(), words, classes);
    report(...told.warnings.map((text) => [text, true] as const), [told.summary, false]);
    result.replaceChildren(...told.parts);
    const found = answer.inService.map(({ position }) => position);
    drawing.setNear({ point, found });
    changed(
      around(
        [point, ...found].map((position) => project(projection, position)),
        world,
        picture,
      ),
    );
  } catch (error) {
    if (!(error instanceof ListUnread)) throw error;
    drawing.setNear(null);
    draw();
    report([words.say(problemKey[error.why]), true]);
  }
}

async function findMe(): Promise<void> {
  report([words.say('locating'), false]);
  result.replaceChildren();
  const place = await locate();
  if (!place.ok) {
    const why = window.isSecureContext ? place.why : 'insecure';
    report([words.say(why), true]);
    return;
  }
  const wereOn = streetsBox?.checked === true;
  showStreets(false);
  const { latitudeDeg, longitudeDeg, accuracyM } = place;
  await findNear({ latitudeDeg, longitudeDeg }, { from: 'device', accuracyM });
  if (wereOn) one('[data-streets-status]').textContent = words.say('streets-off');
}

const middle = (): { x: number; y: number } => ({ x: picture.width / 2, y: picture.height / 2 });
const pointAt = (at: { x: number; y: number }): PublicPosition =>
  unproject(projection, toWorld(view, at, picture));

const gestures = {
  drag: (by: { x: number; y: number }) => changed(dragged(view, by, world, picture)),
  zoom: (factor: number, at = middle()) => changed(zoomed(view, factor, at, world, picture)),
  whole: () => changed(whole(world, picture)),
  choose: (at: { x: number; y: number }) => void findNear(pointAt(at), { from: 'map' }),
};
const buttons: Readonly<Record<string, () => void>> = {
  in: () => gestures.zoom(STEP_FACTOR),
  out: () => gestures.zoom(1 / STEP_FACTOR),
  whole: gestures.whole,
  left: () => gestures.drag({ x: STEP_PX, y: 0 }),
  right: () => gestures.drag({ x: -STEP_PX, y: 0 }),
  up: () => gestures.drag({ x: 0, y: STEP_PX }),
  down: () => gestures.drag({ x: 0, y: -STEP_PX }),
  find: () => void findMe(),
  middle: () => void findNear(pointAt(middle()), { from: 'map' }),
};

for (const button of document.querySelectorAll<HTMLElement>('[data-map]'))
  button.addEventListener('click', () => buttons[button.dataset['map'] ?? '']?.());
streetsBox?.addEventListener('change', () => {
  showStreets(streetsBox.checked);
  draw();
});
listen(box, gestures);
document.documentElement.classList.add('map-moves');
for (const part of document.querySelectorAll<HTMLElement>('[data-with-script]')) part.hidden = false;

function measure(): void {
  const { width, height } = box.getBoundingClientRect();
  if (width === 0 || height === 0) return;
  const first = picture.width === 1;
  picture = { width: Math.round(width), height: Math.round(height) };
  view = first ? whole(world, picture) : zoomed(view, 1, middle(), world, picture);
  draw();
}
new ResizeObserver(measure).observe(box);

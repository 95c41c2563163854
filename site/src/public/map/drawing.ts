import { project, scaleFeet, type Projection } from '../../../../shared/public/mapFrame.ts';
import type { MapCell } from '../../../../shared/public/mapCells.ts';
import { placeMarkers } from '../../../../shared/public/mapSigns.ts';
import type { PublicPosition } from '../../../../shared/public/snapshot.ts';
import type { System } from '../../../../shared/units/units.ts';
import { toPicture, type Point, type Size, type View } from './view.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** The map that the page came with, taken in hand: the same drawing, seen from elsewhere. */
export interface Drawing {
  readonly show: (view: View, picture: Size) => void;
  /** Hydrants of these cells in their exact places, instead of the page's own dots; none puts those back. */
  readonly setCells: (cells: readonly MapCell[]) => void;
  /** The point that distances are measured from and what was found, numbered; null takes them away. */
  readonly setNear: (
    near: { readonly point: PublicPosition; readonly found: readonly PublicPosition[] } | null,
  ) => void;
}

interface Given {
  readonly projection: Projection;
  readonly feetPerUnit: number;
  readonly system: System;
  readonly distance: (feet: number) => string;
}

interface Sign {
  readonly link: SVGElement;
  readonly leader: SVGElement;
  readonly place: Point;
}

/** More names than this would cover each other. */
const MOST_NAMES = 30;
const DOT_PX = 7;
const FURTHER_PX = 9;

const two = (value: number): string => value.toFixed(2);

function make<T extends keyof SVGElementTagNameMap>(
  name: T,
  attributes: Readonly<Record<string, string | number>>,
): SVGElementTagNameMap[T] {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

const wanted = <T extends Element>(root: Element, selector: string): T => {
  const found = root.querySelector<T>(selector);
  if (!found) throw new Error(`the map has no ${selector}`);
  return found;
};

/** Takes the page's map in hand. @throws Error when it is not the drawing that this script was made for. */
export function takeInHand(
  svg: SVGSVGElement,
  { projection, feetPerUnit, system, distance }: Given,
): Drawing {
  const worldLayer = wanted<SVGGElement>(svg, '[data-layer="world"]');
  const dots = wanted<SVGPathElement>(svg, '[data-layer="dots"]');
  const further = wanted<SVGPathElement>(svg, '[data-layer="further"]');
  const names = wanted<SVGGElement>(svg, '[data-layer="names"]');
  const near = wanted<SVGGElement>(svg, '[data-layer="near"]');
  const given = { dots: dots.getAttribute('d') ?? '', further: further.getAttribute('d') ?? '' };
  const dotUnits = Number(dots.getAttribute('stroke-width') ?? 4);
  const signs = [...svg.querySelectorAll<SVGElement>('a[data-x]')].map((link): Sign => {
    const { x = '0', y = '0' } = link.dataset;
    return {
      link,
      leader: wanted(svg, `[data-leader="${link.dataset['sign'] ?? ''}"]`),
      place: { x: Number(x), y: Number(y) },
    };
  });
  const scale = wanted<SVGGElement>(svg, '[data-furniture="scale"]');
  const north = wanted<SVGGElement>(svg, '[data-furniture="north"]');

  let cells: readonly MapCell[] = [];
  let found: { point: Point; found: readonly Point[] } | null = null;

  function showSigns(view: View, picture: Size): void {
    const inside = signs.flatMap((sign, index) => {
      const { x, y } = toPicture(view, sign.place, picture);
      const isIn = x >= 0 && y >= 0 && x <= picture.width && y <= picture.height;
      sign.link.toggleAttribute('hidden', !isIn);
      sign.leader.toggleAttribute('hidden', !isIn);
      return isIn ? [{ index, sign, x, y }] : [];
    });
    placeMarkers(inside, picture).forEach(({ x, y, signX, signY }, order) => {
      const sign = inside[order]?.sign;
      if (!sign) return;
      wanted(sign.link, 'g').setAttribute('transform', `translate(${signX} ${signY})`);
      sign.leader.setAttribute('d', `M${x} ${y}L${signX} ${signY}`);
    });
  }

  const isFound = (place: PublicPosition): boolean => {
    const { x, y } = project(projection, place);
    return found?.found.some((one) => one.x === x && one.y === y) ?? false;
  };

  function showNames(view: View, picture: Size): void {
    const texts: SVGElement[] = [];
    for (const { inService, out } of cells) {
      const rows = [
        ...inService.hydrantId.map((hydrantId, row) => ({
          hydrantId,
          latitudeDeg: inService.latitudeDeg[row] ?? 0,
          longitudeDeg: inService.longitudeDeg[row] ?? 0,
        })),
        ...out,
      ];
      for (const row of rows) {
        const { x, y } = toPicture(view, project(projection, row), picture);
        if (row.hydrantId === null || x < 0 || y < 0 || x > picture.width || y > picture.height) continue;
        const text = make('text', { class: 'dot-name', x: two(x), y: two(y + (isFound(row) ? 30 : 20)) });
        text.textContent = row.hydrantId;
        texts.push(text);
      }
      if (texts.length > MOST_NAMES) break;
    }
    names.replaceChildren(...(texts.length > MOST_NAMES ? [] : texts));
  }

  function showNear(view: View, picture: Size): void {
    if (!found) {
      near.replaceChildren();
      return;
    }
    const point = toPicture(view, found.point, picture);
    const places = found.found.map((place) => toPicture(view, place, picture));
    near.replaceChildren(
      ...places.map((place) =>
        make('path', {
          class: 'leader',
          d: `M${two(point.x)} ${two(point.y)}L${two(place.x)} ${two(place.y)}`,
        }),
      ),
      make('path', {
        class: 'you',
        d: `M${two(point.x - 12)} ${two(point.y)}h24M${two(point.x)} ${two(point.y - 12)}v24`,
      }),
      ...places.toReversed().map((place, index) => {
        const group = make('g', { transform: `translate(${two(place.x)} ${two(place.y)})` });
        const number = make('text', { class: 'near-number', y: 5 });
        number.textContent = String(places.length - index);
        group.append(make('circle', { class: 'near-dot', r: 13 }), number);
        return group;
      }),
    );
  }

  function showFurniture(view: View, picture: Size): void {
    const feetPerPixel = feetPerUnit / view.scale;
    const feet = scaleFeet(feetPerPixel * Math.min(picture.width * 0.3, 200), system);
    const length = feet / feetPerPixel;
    scale.setAttribute('transform', `translate(18 ${two(picture.height - 14)})`);
    wanted(scale, 'path').setAttribute('d', `M0 -6V0H${two(length)}V-6`);
    const text = wanted(scale, 'text');
    text.setAttribute('x', two(length + 10));
    text.textContent = distance(feet);
    north.setAttribute('transform', `translate(${two(picture.width - 22)} ${two(picture.height - 20)})`);
  }

  return {
    show(view, picture) {
      svg.setAttribute('viewBox', `0 0 ${picture.width} ${picture.height}`);
      const { x, y } = toPicture(view, { x: 0, y: 0 }, picture);
      worldLayer.setAttribute('transform', `matrix(${view.scale} 0 0 ${view.scale} ${two(x)} ${two(y)})`);
      const exact = cells.length > 0;
      dots.setAttribute('stroke-width', String((exact ? DOT_PX : Math.max(dotUnits, 2.5)) / view.scale));
      further.setAttribute('stroke-width', String(FURTHER_PX / view.scale));
      showSigns(view, picture);
      showNames(view, picture);
      showNear(view, picture);
      showFurniture(view, picture);
    },
    setCells(next) {
      cells = next;
      const dot = (position: PublicPosition): string => {
        const { x, y } = project(projection, position);
        return `M${x.toFixed(3)} ${y.toFixed(3)}h0`;
      };
      const inCells = cells.flatMap(({ inService }) =>
        inService.latitudeDeg.map((latitudeDeg, row) =>
          dot({ latitudeDeg, longitudeDeg: inService.longitudeDeg[row] ?? 0 }),
        ),
      );
      dots.setAttribute('d', cells.length > 0 ? inCells.join('') : given.dots);
    },
    setNear(next) {
      found = next && {
        point: project(projection, next.point),
        found: next.found.map((position) => project(projection, position)),
      };
    },
  };
}

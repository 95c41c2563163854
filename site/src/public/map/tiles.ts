import { unproject, project, type Projection } from '../../../../shared/public/mapFrame.ts';
import { cornerOf, tileAt, type Tile } from '../../../../shared/public/tileGrid.ts';
import { toWorld, type Size, type View } from './view.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** A tile is drawn between 181 and 362 pixels wide: never blurred, never a crowd of requests. */
const TILE_PX = 256;
/** Nothing that a screen can show asks for more. */
const MOST_TILES = 60;

/** The tiles that cover what is seen, at the zoom that suits it. None where they would be too many. */
export function tilesFor(view: View, picture: Size, projection: Projection, maxzoom: number): Tile[] {
  // Pixels that 360° of longitude take decide the zoom.
  const turnPx = projection.perDegreeEast * view.scale * 360;
  const z = Math.max(0, Math.min(maxzoom, Math.round(Math.log2(turnPx / TILE_PX))));
  const seen = (at: { x: number; y: number }): { x: number; y: number } =>
    tileAt(unproject(projection, toWorld(view, at, picture)), z);
  const [first, last] = [seen({ x: 0, y: 0 }), seen({ x: picture.width, y: picture.height })];
  const [west, north] = [Math.floor(first.x), Math.floor(first.y)];
  const [east, south] = [Math.floor(last.x), Math.floor(last.y)];
  if ((east - west + 1) * (south - north + 1) > MOST_TILES) return [];
  const tiles: Tile[] = [];
  for (let y = north; y <= south; y++) for (let x = west; x <= east; x++) tiles.push({ z, x, y });
  return tiles.filter(({ x, y }) => x >= 0 && y >= 0 && x < 2 ** z && y < 2 ** z);
}

export interface Streets {
  readonly show: (view: View, picture: Size) => void;
  readonly clear: () => void;
}

/**
 * Draws street tiles into a layer of the map's world, each between its true corners: a tile is Mercator inside and the
 * map is not, which at a town's scale is less than a pixel.
 */
export function streets(
  layer: SVGGElement,
  { url, maxzoom }: { readonly url: string; readonly maxzoom: number },
  projection: Projection,
  failed: () => void,
): Streets {
  const drawn = new Map<string, SVGImageElement>();
  return {
    show(view, picture) {
      const tiles = tilesFor(view, picture, projection, maxzoom);
      const names = new Set(tiles.map(({ z, x, y }) => `${z}/${x}/${y}`));
      for (const [name, image] of drawn) {
        if (names.has(name)) continue;
        image.remove();
        drawn.delete(name);
      }
      for (const tile of tiles) {
        const name = `${tile.z}/${tile.x}/${tile.y}`;
        if (drawn.has(name)) continue;
        const [from, to] = [tile, { z: tile.z, x: tile.x + 1, y: tile.y + 1 }].map((corner) =>
          project(projection, cornerOf(corner)),
        ) as [{ x: number; y: number }, { x: number; y: number }];
        const image = document.createElementNS(SVG, 'image');
        const attributes = { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
        for (const [key, value] of Object.entries(attributes)) image.setAttribute(key, String(value));
        image.setAttribute('preserveAspectRatio', 'none');
        image.addEventListener('error', failed);
        image.setAttribute(
          'href',
          url.replace('{z}', String(tile.z)).replace('{x}', String(tile.x)).replace('{y}', String(tile.y)),
        );
        layer.append(image);
        drawn.set(name, image);
      }
    },
    clear() {
      layer.replaceChildren();
      drawn.clear();
    },
  };
}

/** Where a map looks: the point of its world in the middle of the picture, and pixels for each unit of the world. */
export interface View {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}
export interface Size {
  readonly width: number;
  readonly height: number;
}
export interface Point {
  readonly x: number;
  readonly y: number;
}
/** The world that the map shows, and how near one may go, pixels a unit. */
export interface World extends Size {
  readonly mostScale: number;
}

/** All of the world, as large as fits. */
export function whole(world: World, picture: Size): View {
  return {
    x: world.width / 2,
    y: world.height / 2,
    scale: Math.min(picture.width / world.width, picture.height / world.height),
  };
}

const between = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value));

/** No smaller than the whole, no nearer than the most, and never so far aside that nothing is left to see. */
export function held(view: View, world: World, picture: Size): View {
  return {
    x: between(view.x, 0, world.width),
    y: between(view.y, 0, world.height),
    scale: between(view.scale, whole(world, picture).scale, world.mostScale),
  };
}

/** Nearer by a factor (away below 1), with the place under a point of the picture staying there. */
export function zoomed(view: View, factor: number, at: Point, world: World, picture: Size): View {
  const scale = held({ ...view, scale: view.scale * factor }, world, picture).scale;
  const place = toWorld(view, at, picture);
  return held(
    {
      x: place.x - (at.x - picture.width / 2) / scale,
      y: place.y - (at.y - picture.height / 2) / scale,
      scale,
    },
    world,
    picture,
  );
}

/** Moved with the hand: what was under the finger goes with it by so many pixels. */
export const dragged = (view: View, by: Point, world: World, picture: Size): View =>
  held({ ...view, x: view.x - by.x / view.scale, y: view.y - by.y / view.scale }, world, picture);

export const toWorld = (view: View, at: Point, picture: Size): Point => ({
  x: view.x + (at.x - picture.width / 2) / view.scale,
  y: view.y + (at.y - picture.height / 2) / view.scale,
});
export const toPicture = (view: View, place: Point, picture: Size): Point => ({
  x: (place.x - view.x) * view.scale + picture.width / 2,
  y: (place.y - view.y) * view.scale + picture.height / 2,
});

/** Room around what is fitted, pixels. */
const MARGIN = 48;

/** All of these places, with the first in the middle. */
export function around(places: readonly Point[], world: World, picture: Size): View {
  const [middle] = places;
  if (!middle) return whole(world, picture);
  const reach = (of: (place: Point) => number): number =>
    places.reduce((most, place) => Math.max(most, Math.abs(of(place) - of(middle))), 1e-9);
  const scale = Math.min(
    (picture.width / 2 - MARGIN) / reach(({ x }) => x),
    (picture.height / 2 - MARGIN) / reach(({ y }) => y),
  );
  return held({ ...middle, scale }, world, picture);
}

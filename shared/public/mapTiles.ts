import * as z from 'zod';

/**
 * Where the map may take its streets from: square pictures by column, row and zoom, in the Web Mercator tiling that
 * OGC calls WorldWebMercatorQuad (Two Dimensional Tile Matrix Set, 17-083r4, annex D) and TileJSON 3.0.0 takes for
 * granted. The field names are TileJSON's, where it has one.
 */
const isTemplate = (url: string): boolean => {
  const parsed = URL.parse(url.replaceAll(/\{[zxy]\}/g, '0'));
  return (
    parsed?.protocol === 'https:' &&
    ['{z}', '{x}', '{y}'].every((part) => url.split(part).length === 2) &&
    // A host that follows from the tile could be any host, and the page's policy names exactly one.
    !/[{}*]/.test(url.split('/', 3).join('/')) &&
    parsed.username === '' &&
    !/[\s;,'"]/.test(url)
  );
};

export const mapTiles = z.strictObject({
  /** `https://tiles.example.gov/streets/{z}/{x}/{y}.png`: https, one host, each of the three once. */
  url: z.string().max(500).refine(isTemplate, { error: 'tile-address' }),
  /** Shown on the map whenever the streets are, as their licence will ask. */
  attribution: z.string().trim().min(1).max(200),
  /** Finest zoom that the source has. */
  maxzoom: z.int().min(10).max(22).default(18),
});
export type MapTiles = z.infer<typeof mapTiles>;

/** The one origin that the page's policy must allow, `https://tiles.example.gov`. */
export const tileOrigin = ({ url }: MapTiles): string => new URL(url.replaceAll(/\{[zxy]\}/g, '0')).origin;

/**
 * What a public page allows itself, as a Content-Security-Policy: nothing but its own host. Only a map may read lists
 * from it, and take pictures from the one source of streets that the utility has set.
 */
export function publicPolicy({
  reads = false,
  tiles = null,
}: { readonly reads?: boolean; readonly tiles?: MapTiles | null } = {}): string {
  return [
    "default-src 'none'",
    "style-src 'self'",
    "script-src 'self'",
    "font-src 'self'",
    `img-src 'self'${tiles ? ` ${tileOrigin(tiles)}` : ''}`,
    ...(reads ? ["connect-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

import { assetFile, namedIn, type PublishedFile } from './pages.ts';
import type { SiteRenderer } from './renderer.ts';

/**
 * Writes assets and all that they lead to, each once however many pages name it, and what is named before what names
 * it: nothing stands without its parts.
 */
export function assetWriter(
  renderer: SiteRenderer,
  write: (file: PublishedFile) => Promise<void>,
): (paths: readonly string[]) => Promise<void> {
  const assets = new Map<string, { readonly file: Promise<PublishedFile>; written: Promise<void> | null }>();
  const assetAt = (path: string) => {
    const known = assets.get(path) ?? { file: assetFile(renderer, path), written: null };
    assets.set(path, known);
    return known;
  };
  return async (paths) => {
    const seen = new Set<string>();
    const levels: string[][] = [];
    for (let wanted = [...paths]; wanted.length > 0;) {
      const level = [...new Set(wanted)].filter((path) => !seen.has(path));
      level.forEach((path) => seen.add(path));
      levels.push(level);
      const found = await Promise.all(level.map((path) => assetAt(path).file));
      wanted = found.flatMap(namedIn);
    }
    for (const level of levels.toReversed())
      await Promise.all(
        level.map(async (path) => {
          const asset = assetAt(path);
          asset.written ??= asset.file.then((file) => write(file));
          await asset.written;
        }),
      );
  };
}

import { observable } from './observable.ts';

/**
 * The place inside an app, kept behind the `#`: it reaches no server log, works from any static host, and a printed
 * code can point at it (`/crew/#/hydrant/H-0042`).
 */
export interface Route {
  readonly parts: readonly string[];
  readonly query: URLSearchParams;
  readonly path: string;
}

/** A sign that no address has (`50%`, a stranger's code) is read as it stands: the screen then says that it knows none. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function readRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const parts = path.split('/').filter(Boolean).map(decoded);
  return { parts, query: new URLSearchParams(query), path: hash };
}

/** An address inside the app: `to(['hydrant', id], { then: 'strike' })`. */
export function to(parts: readonly string[], query: Readonly<Record<string, string | null>> = {}): string {
  const search = new URLSearchParams(
    Object.entries(query).flatMap(([name, value]) => (value === null ? [] : [[name, value]])),
  ).toString();
  return `#/${parts.map(encodeURIComponent).join('/')}${search ? `?${search}` : ''}`;
}

export const route = observable<Route>({ parts: [], query: new URLSearchParams(), path: '' });

export function startRouter(): void {
  const follow = (): void => {
    // A link to a place on the page (the skip link) is not a change of screen.
    if (location.hash === '' || location.hash.startsWith('#/')) route.set(readRoute(location.hash));
  };
  window.addEventListener('hashchange', follow);
  follow();
}

export function go(address: string): void {
  location.hash = address;
}

/** Goes there without leaving the present place in the history. */
export function replaceWith(address: string): void {
  history.replaceState(null, '', address);
  route.set(readRoute(location.hash));
}

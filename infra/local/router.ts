import { routes, type Route } from '../../shared/deployment/routes.ts';

export interface Match {
  readonly route: Route;
  readonly pathParameters: Readonly<Record<string, string>>;
}

/**
 * The route of the table that a request is for, as API Gateway would choose it: exact segments before parameters.
 * Null when there is none.
 */
export function matchRoute(method: string, path: string): Match | null {
  const segments = path.split('/');
  const matches = routes.flatMap((route): Match[] => {
    const wanted = route.path.split('/');
    if (route.method !== method || wanted.length !== segments.length) return [];
    const pathParameters: Record<string, string> = {};
    for (const [index, part] of wanted.entries()) {
      const given = segments[index] ?? '';
      const name = /^\{(\w+)\}$/.exec(part)?.[1];
      if (name === undefined ? part !== given : given === '') return [];
      if (name !== undefined) pathParameters[name] = decoded(given);
    }
    return [{ route, pathParameters }];
  });
  return (
    matches.sort((a, b) => Object.keys(a.pathParameters).length - Object.keys(b.pathParameters).length)[0] ??
    null
  );
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

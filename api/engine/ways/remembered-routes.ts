import type { FindRun, Mount, Route, RouteRequest } from './route.ts';

/** What of a request may differ within one house. */
type Asked = Omit<RouteRequest, 'plan' | 'tariff'>;

const keyOf = ({ from, to, via, asFound, fromMount, toMount }: Asked): string =>
  JSON.stringify([from, to, via, asFound ?? null, fromMount satisfies Mount, toMount]);

/**
 * A way to find paths that finds each of them once. For one house only: its walls and floors, the tariff and
 * the options must be the same at every request.
 */
export function rememberedRoutes(findRun: FindRun): FindRun {
  const known = new Map<string, Route>();
  return (request) => {
    const key = keyOf(request);
    const found = known.get(key) ?? findRun(request);
    known.set(key, found);
    return found;
  };
}

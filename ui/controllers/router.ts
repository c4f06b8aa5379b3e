import { type PlanView, planViews, type Step, type StepPart, stepParts, steps } from '../job-view.ts';

/** A place within the product. */
export type Route =
  | { readonly page: 'jobs' }
  | { readonly page: 'firm' }
  | { readonly page: 'people' }
  | { readonly page: 'account' }
  | { readonly page: 'missing'; readonly path: string }
  | JobRoute;

/** A job's page: its step, and what of it is looked at. */
export interface JobRoute {
  readonly page: 'job';
  readonly jobId: string;
  readonly step: Step;
  /** True for the two schemes side by side, which is a part of the step Ways. */
  readonly compare: boolean;
  readonly scheme: string | null;
  readonly storey: string | null;
  /** The chosen thing. */
  readonly on: string | null;
  /** What is shown of the house: its plan, or a picture of one circuit. */
  readonly view: PlanView;
  /** The circuit of the picture; null where none was asked for. */
  readonly circuit: string | null;
  /** What of the step is shown, where it has parts. */
  readonly part: StepPart;
  /** What of the survey is to be answered, by its id; null for nothing. */
  readonly ask: string | null;
  /** The two that are compared. */
  readonly a: string | null;
  readonly b: string | null;
}

const isStep = (word: string | undefined): word is Step => steps.some((step) => step === word);

const isPlanView = (word: string | null): word is PlanView => planViews.some((view) => view === word);

const isStepPart = (word: string | null): word is StepPart => stepParts.some((part) => part === word);

/** A part of a path as it was before it was written into one; null for what no browser writes. */
function decoded(part: string): string | null {
  try {
    return decodeURIComponent(part);
  } catch {
    return null;
  }
}

/** The route of an address; what is no place of ours is `missing`. */
export function routeOf(url: URL): Route {
  const [first, ...rest] = url.pathname.split('/').filter((part) => part !== '');
  if (first === undefined) return { page: 'jobs' };
  if (first === 'firm' && rest.length === 0) return { page: 'firm' };
  if ((first === 'people' || first === 'account') && rest.length === 0) return { page: first };
  const [id, step, compare, ...more] = rest;
  const known = first === 'jobs' && id !== undefined && more.length === 0;
  const plainStep = step === undefined || (isStep(step) && compare === undefined);
  const jobId = known ? decoded(id) : null;
  if (jobId === null || !(plainStep || (step === 'ways' && compare === 'compare')))
    return { page: 'missing', path: url.pathname };
  const asked = (name: string): string | null => url.searchParams.get(name);
  const [view, part] = [asked('view'), asked('part')];
  return {
    page: 'job',
    jobId,
    step: isStep(step) ? step : 'as-found',
    compare: compare === 'compare',
    scheme: asked('scheme'),
    storey: asked('storey'),
    on: asked('on'),
    view: isPlanView(view) ? view : 'plan',
    circuit: asked('circuit'),
    part: isStepPart(part) ? part : 'bill',
    ask: asked('ask'),
    a: asked('a'),
    b: asked('b'),
  };
}

/** A job's page without what may be left out. */
type JobPlace = Omit<JobRoute, 'page' | 'view' | 'circuit' | 'part' | 'ask'> &
  Partial<Pick<JobRoute, 'view' | 'circuit' | 'part' | 'ask'>>;

/** The address of a job's page; parts that are null, the plan and the bill are left out. */
export function hrefOf(route: JobPlace): string {
  const query = new URLSearchParams();
  for (const key of ['scheme', 'storey', 'on', 'a', 'b'] as const) {
    const value = route[key];
    if (value !== null && (route.compare || (key !== 'a' && key !== 'b'))) query.set(key, value);
  }
  const { view = 'plan', circuit = null, part = 'bill', ask = null } = route;
  if (view !== 'plan') query.set('view', view);
  if (circuit !== null) query.set('circuit', circuit);
  if (part !== 'bill') query.set('part', part);
  if (ask !== null) query.set('ask', ask);
  const text = query.toString();
  const path = `/jobs/${encodeURIComponent(route.jobId)}/${route.step}${route.compare ? '/compare' : ''}`;
  return text === '' ? path : `${path}?${text}`;
}

/** The address that a job is opened at. */
export const jobHref = (jobId: string, step: Step = 'as-found'): string =>
  `/jobs/${encodeURIComponent(jobId)}/${step}`;

/** The job that a step of the browser's history was come to from, by what `Router` left with it. */
function jobComeFrom(state: unknown, here: string): JobRoute | null {
  const from = typeof state === 'object' && state !== null && 'from' in state ? state.from : null;
  if (typeof from !== 'string') return null;
  const url = new URL(from, here);
  const route = url.origin === new URL(here).origin ? routeOf(url) : null;
  return route?.page === 'job' ? route : null;
}

/** Follows links within the product and the browser's own back and forward, without loading anew. */
export class Router {
  readonly #changed: (route: Route) => void;

  constructor(changed: (route: Route) => void) {
    this.#changed = changed;
  }

  get route(): Route {
    return routeOf(new URL(location.href));
  }

  /** The job that this place was come to from, as it was looked at; null where that was no job. It outlasts a reload. */
  get cameFrom(): JobRoute | null {
    return jobComeFrom(history.state, location.href);
  }

  /** Goes to an address of ours; `replace` leaves no step to go back to. */
  go(href: string, how: 'push' | 'replace' = 'push'): void {
    const url = new URL(href, location.href);
    if (url.href === location.href) return;
    if (how === 'push') history.pushState({ from: location.pathname + location.search }, '', url);
    else history.replaceState(history.state, '', url);
    this.#changed(routeOf(url));
  }

  start(): void {
    addEventListener('popstate', this.#popped);
    document.addEventListener('click', this.#clicked);
  }

  stop(): void {
    removeEventListener('popstate', this.#popped);
    document.removeEventListener('click', this.#clicked);
  }

  readonly #popped = (): void => this.#changed(this.route);

  readonly #clicked = (event: MouseEvent): void => {
    const link = event.composedPath().find((one) => one instanceof HTMLAnchorElement);
    if (!(link instanceof HTMLAnchorElement) || event.defaultPrevented || event.button !== 0) return;
    if (event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
    const elsewhere = link.target !== '' || link.hasAttribute('download') || link.origin !== location.origin;
    if (elsewhere || link.pathname.startsWith('/api/') || link.hash !== '') return;
    event.preventDefault();
    this.go(link.href);
  };
}

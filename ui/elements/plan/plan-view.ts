import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  svg,
  type TemplateResult,
} from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { type ScreenPlan, screenExtent, screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Shape } from '#drawing/scene.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { fromSheet, type SheetPoint, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Place } from '#model/installation.ts';
import { send } from '../../job-events.ts';
import { controlsCss } from '../shared-styles.ts';
import { drawnThings } from './drawn-things.ts';
import { Glide } from './glide.ts';
import { type Extent, meantAt, symbolExtent, type Target } from './group-extent.ts';
import { inkStyles } from './ink-styles.ts';
import { MovingHand } from './moving-hand.ts';
import { PointerReader } from './plan-gestures.ts';
import { gridTemplate, hintWords, placeTemplate, toolsTemplate } from './plan-parts.ts';
import { planCss } from './plan-styles.ts';
import {
  freeParts,
  type PlanWindow,
  PX_PER_UNIT,
  panned,
  type Size,
  wholeWindow,
  withInSight,
  zoomed,
} from './plan-window.ts';
import { movedByKey, placeAt, placeInWords, roomOfPlace, USUAL_HEIGHT_MM } from './point-movement.ts';
import { scaleBarTemplate } from './scale-bar.ts';
import { shapeTemplate } from './shape-template.ts';
import { storeyOfThing } from './storey-of-thing.ts';
import { FINGER, type Group, markTemplate, thingTemplate, wallTemplate } from './thing-template.ts';

const ZOOM_STEP = 1.35;
/** How far off a symbol that cannot be moved is still meant, units of the scene. */
const NEAR = 1.4;

const groupsOf = (shapes: readonly Shape[]): readonly Group[] =>
  shapes.filter((shape): shape is Group => shape.kind === 'group');

/**
 * The plan of one storey: pan, zoom, choose a thing, drag the points that may be moved along and between walls, or
 * pick a place for a new one. Everything can be done by mouse, finger and keyboard.
 *
 * @fires thing-chosen, point-placed, place-tapped, storey-shown, plan-asked
 */
export class PlanView extends LitElement {
  static override properties: PropertyDeclarations = {
    worked: { attribute: false },
    storeyId: { attribute: false },
    findings: { attribute: false },
    chosen: { attribute: false },
    lit: { attribute: false },
    movable: { attribute: false },
    placing: { type: Boolean },
    size: { state: true },
    windows: { state: true },
    ghost: { state: true },
    reached: { state: true },
    said: { state: true },
  };
  static override styles = [controlsCss, inkStyles, planCss];
  declare worked: Worked;
  declare storeyId: string;
  declare findings: readonly Finding[];
  declare chosen: string | null;
  declare lit: ReadonlySet<string>;
  declare movable: ReadonlySet<string>;
  declare placing: boolean;
  /** Of the element's box, px; null before it was measured. */
  declare private size: Size | null;
  /** Where each storey was left; absent: whole. */
  declare private windows: ReadonlyMap<string, PlanWindow>;
  /** Where a new point would come, while a place is waited for. */
  declare private ghost: Place | null;
  declare private reached: string | null;
  /** What a screen reader is told of the last movement. */
  declare private said: string;
  #drawn: ScreenPlan | null = null;
  #targets: readonly Target[] = [];
  #lit: ReadonlySet<string> = new Set();
  /** What is in sight while a point moves: a house that is seen whole must not shift under the hand. */
  #held: PlanWindow | null = null;
  #focusBefore: HTMLElement | null = null;
  readonly #watch = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    if (box !== undefined && box.width > 0) this.size = { width: box.width, height: box.height };
  });
  readonly #glide = new Glide((window) => this.#look(window));
  readonly #hand = new MovingHand((pointId, place, phase) => {
    if (phase === 'end') this.#held = null;
    send(this, 'point-placed', { pointId, place, phase });
  });
  readonly #pointers = new PointerReader(() => this.getBoundingClientRect(), {
    thingAt: (event) => this.#thingAt(event),
    isMovable: (subject) => this.movable.has(subject) && !this.placing,
    tapped: (subject, x, y) => this.#tapped(subject, x, y),
    panned: (dx, dy) => this.#lookNow(panned(this.#window, dx, dy)),
    pinched: (factor, x, y) => this.#lookNow(zoomed(this.#window, factor, this.#planAt(x, y))),
    dragged: (subject, dx, dy, phase) => this.#dragged(subject, dx, dy, phase),
    hovered: (x, y) => this.#hovered(x, y),
  });

  constructor() {
    super();
    this.findings = [];
    this.chosen = null;
    this.lit = new Set();
    this.movable = new Set();
    this.placing = false;
    this.size = null;
    this.windows = new Map();
    this.ghost = null;
    this.reached = null;
    this.said = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
    this.#glide.stop();
    this.#hand.letGo();
  }

  get #box(): Size {
    return this.size ?? { width: 600, height: 400 };
  }

  get #whole(): PlanWindow {
    const names = this.worked.plan.storeys.map(({ storey }) => storey.name);
    return wholeWindow(screenExtent(this.worked, this.storeyId), this.#box, freeParts(this.#box, names));
  }

  get #window(): PlanWindow {
    return this.windows.get(this.storeyId) ?? this.#held ?? this.#whole;
  }

  #look(window: PlanWindow | null): void {
    const windows = new Map(this.windows);
    if (window === null) windows.delete(this.storeyId);
    else windows.set(this.storeyId, window);
    this.windows = windows;
  }

  /** As a hand asks: what still glides stops. */
  #lookNow(window: PlanWindow | null): void {
    this.#glide.stop();
    this.#look(window);
  }

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('placing')) this.#startOrEndPlacing();
    const { scale } = this.#window;
    const isDrawn =
      this.#drawn?.frame.scale === scale &&
      !['worked', 'storeyId', 'findings', 'movable'].some((name) => changed.has(name));
    if (!isDrawn) this.#draw(scale);
    if (changed.has('lit') || changed.has('worked')) this.#lit = drawnThings(this.worked, this.lit);
  }

  #draw(scale: number): void {
    const { worked, storeyId, findings } = this;
    const withWanted = worked.job.points.some(
      ({ id, status }) => status === 'wanted' && this.movable.has(id),
    );
    this.#drawn = screenPlan({ worked, storeyId, findings, scale, withWanted });
    this.#targets = this.#layer('points').flatMap(({ subject, shapes }) => {
      const extent = symbolExtent(shapes);
      return extent === null
        ? []
        : [{ subject, extent, reach: this.movable.has(subject) ? FINGER / 2 : NEAR }];
    });
  }

  override updated(changed: PropertyValues): void {
    if (changed.has('chosen') || changed.has('lit')) this.#bringIntoView(true);
    else if (changed.has('storeyId')) this.#bringIntoView(false);
    if (changed.has('placing')) this.#moveFocusForPlacing();
  }

  /** Shows what was just chosen or lit: its storey first, then its place if that is out of sight. */
  #bringIntoView(mayChangeStorey: boolean): void {
    const wanted = this.lit.size > 0 ? [...this.#lit] : this.chosen === null ? [] : [this.chosen];
    const spots = wanted.map((id) => this.#drawn?.spots.get(id)).filter((spot) => spot !== undefined);
    if (spots.length > 0) {
      this.#bringSpotsIntoView(spots);
      return;
    }
    const storeyId = wanted.map((id) => storeyOfThing(this.worked, id)).find((id) => id !== null);
    if (mayChangeStorey && storeyId !== undefined && storeyId !== this.storeyId)
      send(this, 'storey-shown', { storeyId });
  }

  #bringSpotsIntoView(spots: readonly SheetPoint[]): void {
    const frame = this.#drawn?.frame;
    if (frame === undefined || this.size === null || this.#hand.moving !== null) return;
    const window = this.#window;
    const places = spots.map((spot) => fromSheet(frame, spot));
    const target = withInSight(window, places, this.size);
    if (target !== window) this.#glide.to(window, target);
  }

  #sight(): Extent {
    const [width, height] = [this.#box.width / PX_PER_UNIT, this.#box.height / PX_PER_UNIT];
    if (this.#drawn === null) return { x: 0, y: 0, width, height };
    const [x, y] = toSheet(this.#drawn.frame, this.#window.middle);
    return { x: x - width / 2, y: y - height / 2, width, height };
  }

  #sceneAt(xPx: number, yPx: number): SheetPoint {
    const { x, y } = this.#sight();
    return sheetPoint(x + xPx / PX_PER_UNIT, y + yPx / PX_PER_UNIT);
  }

  #planAt(xPx: number, yPx: number): PlanPoint {
    return this.#drawn === null ? planPoint(0, 0) : fromSheet(this.#drawn.frame, this.#sceneAt(xPx, yPx));
  }

  #placeAt(xPx: number, yPx: number): Place {
    return placeAt(this.worked.plan, this.storeyId, this.#planAt(xPx, yPx), USUAL_HEIGHT_MM);
  }

  #placeOf(pointId: string): Place | undefined {
    return this.worked.job.points.find(({ id }) => id === pointId)?.place;
  }

  #thingAt(event: PointerEvent): string | null {
    const { left, top } = this.getBoundingClientRect();
    const meant = meantAt(this.#targets, this.#sceneAt(event.clientX - left, event.clientY - top));
    if (meant !== null) return meant;
    for (const one of event.composedPath())
      if (one instanceof SVGElement && one.dataset.subject !== undefined) return one.dataset.subject;
    return null;
  }

  #tapped(subject: string | null, x: number, y: number): void {
    if (this.placing) send(this, 'place-tapped', { place: this.#placeAt(x, y) });
    else this.#choose(subject);
  }

  #choose(subject: string | null): void {
    if (subject !== null) this.reached = subject;
    send(this, 'thing-chosen', { subjectId: subject });
  }

  #hovered(x: number, y: number): void {
    if (this.placing) this.ghost = this.#placeAt(x, y);
  }

  #dragged(pointId: string, dx: number, dy: number, phase: 'begin' | 'move' | 'end'): void {
    if (phase === 'begin') this.#take(pointId);
    const { moving } = this.#hand;
    if (moving === null || phase === 'begin') return;
    const mmPerPx = this.#window.scale / PX_PER_UNIT;
    const at = planPoint(moving.from[0] + dx * mmPerPx, moving.from[1] - dy * mmPerPx);
    this.#hand.bring(placeAt(this.worked.plan, this.storeyId, at, moving.place.heightMm));
    if (phase === 'end') this.#letGo();
    else this.requestUpdate();
  }

  /** Takes a point that has a place; false where it has none. */
  #take(pointId: string): boolean {
    if (this.#hand.moving?.pointId === pointId) return true;
    const from = this.worked.plan.positionOfPoint.get(pointId)?.at;
    const place = this.#placeOf(pointId);
    if (from === undefined || place === undefined) return false;
    this.#glide.stop();
    this.#held = this.#window;
    this.#hand.take({ pointId, from, place });
    return true;
  }

  #letGo(): void {
    const { moving } = this.#hand;
    if (moving === null) return;
    this.#hand.letGo();
    this.#choose(moving.pointId);
    this.said = this.#wordsOf(moving.place, moving.pointId);
  }

  readonly #wheeled = (event: WheelEvent): void => {
    event.preventDefault();
    const { left, top } = this.getBoundingClientRect();
    const factor = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0016));
    this.#lookNow(zoomed(this.#window, factor, this.#planAt(event.clientX - left, event.clientY - top)));
  };

  readonly #keyed = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const subject = this.#subjectOf(event);
    const isUsed =
      this.#windowKey(event.key) ||
      (this.placing ? this.#placingKey(event) : subject !== null && this.#thingKey(event, subject));
    if (isUsed) event.preventDefault();
  };

  /** A key let go of: what it moved has come to rest. */
  readonly #keyLetGo = (): void => this.#letGo();

  /** A screen reader that presses what it stands on sends a click alone. */
  readonly #clicked = (event: MouseEvent): void => {
    const subject = this.#subjectOf(event);
    if (event.detail === 0 && subject !== null) this.#choose(subject);
  };

  #subjectOf(event: Event): string | null {
    const [first] = event.composedPath();
    return first instanceof SVGElement ? (first.dataset.subject ?? null) : null;
  }

  #zoom(factor: number): void {
    this.#lookNow(zoomed(this.#window, factor, this.#window.middle));
  }

  #windowKey(key: string): boolean {
    if (key === '+' || key === '=') this.#zoom(ZOOM_STEP);
    else if (key === '-') this.#zoom(1 / ZOOM_STEP);
    else if (key === '0') this.#lookNow(null);
    else if (key === 'Escape' && this.placing) this.#giveUpPlacing();
    else return false;
    return true;
  }

  #giveUpPlacing(): void {
    this.dispatchEvent(
      new CustomEvent('plan-asked', { detail: { placing: false }, bubbles: true, composed: true }),
    );
  }

  #startOrEndPlacing(): void {
    const { width, height } = this.#box;
    this.ghost = this.placing && this.#drawn !== null ? this.#placeAt(width / 2, height / 2) : null;
  }

  /** Who asked for a place by keyboard goes on in the plan, and goes back to where they were. */
  #moveFocusForPlacing(): void {
    let focused = document.activeElement;
    while (focused?.shadowRoot?.activeElement) focused = focused.shadowRoot.activeElement;
    const plan = this.renderRoot.querySelector<SVGElement>('svg.plan');
    if (this.placing && focused instanceof HTMLElement && focused.matches(':focus-visible')) {
      this.#focusBefore = focused;
      plan?.focus({ preventScroll: true });
      return;
    }
    if (!this.placing && this.#focusBefore?.isConnected && focused === plan) this.#focusBefore.focus();
    this.#focusBefore = null;
  }

  #placingKey({ key, shiftKey }: KeyboardEvent): boolean {
    const { ghost } = this;
    if (ghost === null) return false;
    if (key === 'Enter' || key === ' ') {
      send(this, 'place-tapped', { place: ghost });
      return true;
    }
    const place = movedByKey(this.worked.plan, ghost, key, shiftKey);
    if (place === null) return false;
    this.ghost = place;
    this.said = this.#wordsOf(place, null);
    return true;
  }

  #thingKey({ key, shiftKey }: KeyboardEvent, subject: string): boolean {
    if (key === 'Enter' || key === ' ') this.#choose(subject);
    else if (this.movable.has(subject) && this.#movePointByKey(subject, key, shiftKey)) return true;
    else if (key === 'PageDown' || key === 'ArrowRight' || key === 'ArrowDown') this.#reachNext(subject, 1);
    else if (key === 'PageUp' || key === 'ArrowLeft' || key === 'ArrowUp') this.#reachNext(subject, -1);
    else return false;
    return true;
  }

  #movePointByKey(pointId: string, key: string, isFine: boolean): boolean {
    const before = this.#hand.moving?.place ?? this.#placeOf(pointId);
    const place = before && movedByKey(this.worked.plan, before, key, isFine);
    if (place === undefined || place === null || !this.#take(pointId)) return false;
    this.#hand.bring(place);
    this.said = this.#wordsOf(place, pointId);
    return true;
  }

  #reachNext(subject: string, by: 1 | -1): void {
    const things = this.#things();
    const at = things.findIndex((group) => group.subject === subject);
    const next = things[(at + by + things.length) % things.length];
    if (next === undefined) return;
    this.reached = next.subject;
    const spot = this.#drawn?.spots.get(next.subject);
    if (spot !== undefined) this.#bringSpotsIntoView([spot]);
    void this.updateComplete.then(() => {
      const found = [...this.renderRoot.querySelectorAll<SVGElement>('.thing')].find(
        (one) => one.dataset.subject === next.subject,
      );
      found?.focus({ preventScroll: true });
    });
  }

  #layer(name: string): readonly Group[] {
    return groupsOf(this.#drawn?.scene.layers.find((layer) => layer.name === name)?.shapes ?? []);
  }

  /** Points, boards and joints first, then cables: the order in which the keyboard comes to them. */
  #things(): readonly Group[] {
    return [...this.#layer('points'), ...this.#layer('cables')];
  }

  override render(): TemplateResult {
    const sight = this.#sight();
    const classes = `plan ${this.placing ? 'placing' : ''} ${this.#pointers.isPanning ? 'panning' : ''}`;
    return html`<svg
        class=${classes}
        viewBox=${`${sight.x} ${sight.y} ${sight.width} ${sight.height}`}
        role="group"
        aria-label=${this.#name()}
        tabindex=${this.placing ? 0 : nothing}
        @pointerdown=${this.#pointers.down}
        @pointermove=${this.#pointers.move}
        @pointerup=${this.#pointers.up}
        @pointercancel=${this.#pointers.cancelled}
        @wheel=${{ handleEvent: this.#wheeled, passive: false }}
        @click=${this.#clicked}
        @keydown=${this.#keyed}
        @keyup=${this.#keyLetGo}
        @focusout=${this.#keyLetGo}
      >
        ${this.#drawing(sight)}
      </svg>
      ${this.#foot()} ${this.#emptyWords()}
      ${toolsTemplate({
        nearer: () => this.#zoom(ZOOM_STEP),
        further: () => this.#zoom(1 / ZOOM_STEP),
        whole: () => this.#lookNow(null),
      })}
      <p class="visually-hidden" role="status">${this.said}</p>`;
  }

  #name(): string {
    const storey = this.#drawn?.scene.title ?? '';
    return this.placing
      ? `Plan, ${storey}: choose a place with the arrows, [ and ], then Enter`
      : `Plan, ${storey}`;
  }

  #drawing(sight: Extent): unknown {
    const drawn = this.#drawn;
    if (drawn === null) return nothing;
    const place = this.placing ? this.ghost : (this.#hand.moving?.place ?? null);
    return svg`${gridTemplate(drawn.frame, sight)}
      ${drawn.scene.layers.map(({ name, shapes }) => svg`<g class=${name}>${this.#shapes(name, shapes)}</g>`)}
      ${placeTemplate(drawn.frame, this.worked.plan, place, this.placing)}`;
  }

  #shapes(name: string, shapes: readonly Shape[]): unknown {
    if (name === 'findings') return groupsOf(shapes).map(markTemplate);
    if (name === 'walls')
      return groupsOf(shapes).map((group) => wallTemplate(group, this.#lit.has(group.subject)));
    if (name !== 'points' && name !== 'cables') return shapes.map(shapeTemplate);
    const things = this.#things();
    const reached = things.some(({ subject }) => subject === this.reached)
      ? this.reached
      : things[0]?.subject;
    return repeat(
      groupsOf(shapes),
      ({ subject }) => subject,
      (group) =>
        thingTemplate(group, {
          chosen: this.chosen === group.subject,
          lit: this.#lit.has(group.subject),
          movable: this.movable.has(group.subject),
          moving: this.#hand.moving?.pointId === group.subject,
          reached: reached === group.subject,
        }),
    );
  }

  /** "W1, 1080 mm from the left corner, 450 mm above floor"; for a new point its room in the label's stead. */
  #wordsOf(place: Place, pointId: string | null): string {
    const { plan, job } = this.worked;
    const label = job.points.find(({ id }) => id === pointId)?.label;
    const name = pointId === null ? roomOfPlace(plan, place) : (label ?? '');
    return [name, placeInWords(plan, place)].filter((words) => words !== '').join(', ');
  }

  /** The scale, and what can be done; while something moves, where it is. */
  #foot(): TemplateResult {
    const { moving } = this.#hand;
    const place = moving?.place ?? this.ghost;
    const labels = this.worked.job.points
      .filter(({ id }) => this.movable.has(id) && this.#drawn?.spots.has(id))
      .map(({ label }) => label);
    return html`<div class="foot">
      ${scaleBarTemplate(this.#window.scale)}
      ${
        place === null || place === undefined
          ? nothing
          : html`<span class="telling" aria-hidden="true">${this.#wordsOf(place, moving?.pointId ?? null)}</span>`
      }
      ${
        moving === null
          ? html`<span class=${this.placing ? 'hint asked' : 'hint'}>${hintWords(labels, this.placing)}</span>`
          : nothing
      }
    </div>`;
  }

  #emptyWords(): TemplateResult | typeof nothing {
    const storey = this.worked.plan.storeyById.get(this.storeyId)?.storey;
    if (storey !== undefined && storey.walls.length > 0) return nothing;
    return html`<p class="empty">
      No walls drawn yet. Points can be listed all the same, and are priced by typical lengths.
    </p>`;
  }
}
customElements.define('plan-view', PlanView);
declare global {
  interface HTMLElementTagNameMap {
    'plan-view': PlanView;
  }
}

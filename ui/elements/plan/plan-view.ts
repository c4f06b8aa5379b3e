import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type SVGTemplateResult,
  svg,
  type TemplateResult,
} from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { type ScreenPlan, screenExtent, screenPlan } from '#drawing/plan/screen-plan.ts';
import type { Shape } from '#drawing/scene.ts';
import type { Worked } from '#engine/connections/worked.ts';
import { type PlanPoint, planPoint } from '#engine/plan/plane.ts';
import { positionOfPlace } from '#engine/plan/position-of-place.ts';
import { fromSheet, sheetPoint, toSheet } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import type { Place } from '#model/installation.ts';
import { send } from '../../job-events.ts';
import { controlsCss } from '../shared-styles.ts';
import { inkStyles } from './ink-styles.ts';
import { PointerReader } from './plan-gestures.ts';
import { planCss } from './plan-styles.ts';
import { type PlanWindow, PX_PER_UNIT, panned, wholeWindow, zoomed } from './plan-window.ts';
import { movedAlong, placeAt, placeInWords, USUAL_HEIGHT_MM } from './point-movement.ts';
import { shapeTemplate } from './shape-template.ts';
import { storeyOfThing } from './storey-of-thing.ts';
import { markTemplate, thingTemplate } from './thing-template.ts';

type Group = Extract<Shape, { kind: 'group' }>;

const zoomStep = 1.35;

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
    moving: { state: true },
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
  declare private size: { readonly width: number; readonly height: number } | null;
  /** Where each storey was left; absent: whole. */
  declare private windows: ReadonlyMap<string, PlanWindow>;
  declare private ghost: Place | null;
  declare private reached: string | null;
  /** The point under the hand, and where it has got to. */
  declare private moving: {
    readonly pointId: string;
    readonly from: PlanPoint;
    readonly place: Place;
  } | null;
  #drawn: ScreenPlan | null = null;
  #frame: number | null = null;
  readonly #watch = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    if (box !== undefined && box.width > 0) this.size = { width: box.width, height: box.height };
  });
  readonly #pointers = new PointerReader(() => this.getBoundingClientRect(), {
    thingAt: (event) => this.#thingAt(event),
    isMovable: (subject) => this.movable.has(subject) && !this.placing,
    tapped: (subject, x, y) => this.#tapped(subject, x, y),
    panned: (dx, dy) => this.#look(panned(this.#window, dx, dy)),
    pinched: (factor, x, y) => this.#look(zoomed(this.#window, factor, this.#planAt(x, y))),
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
    this.moving = null;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#watch.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
  }

  get #window(): PlanWindow {
    const left = this.windows.get(this.storeyId);
    if (left !== undefined) return left;
    const { width, height } = this.size ?? { width: 600, height: 400 };
    return wholeWindow(screenExtent(this.worked, this.storeyId), width, height);
  }

  #look(window: PlanWindow | null): void {
    const windows = new Map(this.windows);
    if (window === null) windows.delete(this.storeyId);
    else windows.set(this.storeyId, window);
    this.windows = windows;
  }

  override willUpdate(changed: PropertyValues): void {
    const { scale } = this.#window;
    const redraw =
      this.#drawn === null ||
      changed.has('worked') ||
      changed.has('storeyId') ||
      changed.has('findings') ||
      this.#drawn.frame.scale !== scale;
    if (redraw)
      this.#drawn = screenPlan({
        worked: this.worked,
        storeyId: this.storeyId,
        findings: this.findings,
        scale,
      });
    if (changed.has('placing') && !this.placing) this.ghost = null;
  }

  override updated(changed: PropertyValues): void {
    if (changed.has('chosen') || changed.has('lit')) this.#bringIntoView();
  }

  /** Shows what was just chosen or lit: its storey first, then its place if that is out of sight. */
  #bringIntoView(): void {
    const wanted = this.lit.size > 0 ? [...this.lit] : this.chosen === null ? [] : [this.chosen];
    const spots = wanted.map((id) => this.#drawn?.spots.get(id)).filter((spot) => spot !== undefined);
    if (spots.length === 0) {
      const storeyId = wanted.map((id) => storeyOfThing(this.worked, id)).find((id) => id !== null);
      if (storeyId !== undefined && storeyId !== this.storeyId) send(this, 'storey-shown', { storeyId });
      return;
    }
    const box = this.#viewBox();
    const inSight = spots.some(
      ([x, y]) => x > box.x + 4 && x < box.x + box.width - 4 && y > box.y + 4 && y < box.y + box.height - 4,
    );
    const [first] = spots;
    if (inSight || first === undefined || this.#drawn === null || this.size === null) return;
    this.#look({ ...this.#window, middle: fromSheet(this.#drawn.frame, first) });
  }

  #viewBox(): { x: number; y: number; width: number; height: number } {
    const width = (this.size?.width ?? 600) / PX_PER_UNIT;
    const height = (this.size?.height ?? 400) / PX_PER_UNIT;
    if (this.#drawn === null) return { x: 0, y: 0, width, height };
    const [x, y] = toSheet(this.#drawn.frame, this.#window.middle);
    return { x: x - width / 2, y: y - height / 2, width, height };
  }

  #planAt(xPx: number, yPx: number): PlanPoint {
    const box = this.#viewBox();
    if (this.#drawn === null) return planPoint(0, 0);
    return fromSheet(this.#drawn.frame, sheetPoint(box.x + xPx / PX_PER_UNIT, box.y + yPx / PX_PER_UNIT));
  }

  #thingAt(event: PointerEvent): string | null {
    for (const one of event.composedPath())
      if (one instanceof SVGElement && one.dataset.subject !== undefined) return one.dataset.subject;
    return null;
  }

  #tapped(subject: string | null, x: number, y: number): void {
    if (!this.placing) {
      send(this, 'thing-chosen', { subjectId: subject });
      return;
    }
    const place = placeAt(this.worked.plan, this.storeyId, this.#planAt(x, y), USUAL_HEIGHT_MM);
    send(this, 'place-tapped', { place });
  }

  #hovered(x: number, y: number): void {
    if (this.placing)
      this.ghost = placeAt(this.worked.plan, this.storeyId, this.#planAt(x, y), USUAL_HEIGHT_MM);
  }

  #dragged(pointId: string, dx: number, dy: number, phase: 'begin' | 'move' | 'end'): void {
    const point = this.worked.job.points.find(({ id }) => id === pointId);
    if (phase === 'begin') {
      const position = this.worked.plan.positionOfPoint.get(pointId);
      if (position !== undefined && point?.place !== undefined)
        this.moving = { pointId, from: position.at, place: point.place };
      return;
    }
    if (this.moving === null) return;
    const mmPerPx = this.#window.scale / PX_PER_UNIT;
    const at = planPoint(this.moving.from[0] + dx * mmPerPx, this.moving.from[1] - dy * mmPerPx);
    const place = placeAt(this.worked.plan, this.storeyId, at, this.moving.place.heightMm);
    this.moving = { ...this.moving, place };
    if (phase === 'move') this.#sendNextFrame(pointId);
    else this.#drop(pointId, place);
  }

  /** A hand moves more often than a screen is drawn: the newest place is told once a frame. */
  #sendNextFrame(pointId: string): void {
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      if (this.moving !== null)
        send(this, 'point-placed', { pointId, place: this.moving.place, phase: 'move' });
    });
  }

  #drop(pointId: string, place: Place): void {
    if (this.#frame !== null) cancelAnimationFrame(this.#frame);
    this.#frame = null;
    this.moving = null;
    send(this, 'point-placed', { pointId, place, phase: 'end' });
    send(this, 'thing-chosen', { subjectId: pointId });
  }

  readonly #wheeled = (event: WheelEvent): void => {
    event.preventDefault();
    const box = this.getBoundingClientRect();
    const factor = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0016));
    this.#look(zoomed(this.#window, factor, this.#planAt(event.clientX - box.left, event.clientY - box.top)));
  };

  readonly #keyed = (event: KeyboardEvent): void => {
    const subject = event.composedPath().find((one): one is SVGElement => one instanceof SVGElement)
      ?.dataset.subject;
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (this.#windowKey(event.key) || (subject !== undefined && this.#thingKey(event, subject)))
      event.preventDefault();
  };

  #windowKey(key: string): boolean {
    const { middle } = this.#window;
    if (key === '+' || key === '=') this.#look(zoomed(this.#window, zoomStep, middle));
    else if (key === '-') this.#look(zoomed(this.#window, 1 / zoomStep, middle));
    else if (key === '0') this.#look(null);
    else if (key === 'Escape' && this.placing) this.#giveUpPlacing();
    else return false;
    return true;
  }

  #giveUpPlacing(): void {
    this.dispatchEvent(
      new CustomEvent('plan-asked', { detail: { placing: false }, bubbles: true, composed: true }),
    );
  }

  #thingKey(event: KeyboardEvent, subject: string): boolean {
    const { key, shiftKey } = event;
    if (key === 'Enter' || key === ' ') send(this, 'thing-chosen', { subjectId: subject });
    else if (key === 'PageDown') this.#reachNext(subject, 1);
    else if (key === 'PageUp') this.#reachNext(subject, -1);
    else if (key.startsWith('Arrow')) {
      const ahead = key === 'ArrowRight' || key === 'ArrowDown' ? 1 : -1;
      if (this.movable.has(subject)) this.#nudge(subject, ahead * (shiftKey ? 10 : 50));
      else this.#reachNext(subject, ahead);
    } else if ((key === 'Home' || key === 'End') && this.movable.has(subject))
      this.#nudge(subject, key === 'Home' ? -100_000 : 100_000);
    else return false;
    return true;
  }

  #nudge(pointId: string, byMm: number): void {
    const place = this.worked.job.points.find(({ id }) => id === pointId)?.place;
    if (place === undefined) return;
    send(this, 'point-placed', { pointId, place: movedAlong(this.worked.plan, place, byMm), phase: 'end' });
  }

  #reachNext(subject: string, by: 1 | -1): void {
    const things = this.#things();
    const at = things.findIndex((group) => group.subject === subject);
    const next = things[(at + by + things.length) % things.length];
    if (next === undefined) return;
    this.reached = next.subject;
    void this.updateComplete.then(() => {
      const found = [...this.renderRoot.querySelectorAll<SVGElement>('g[role=button]')].find(
        (one) => one.dataset.subject === next.subject,
      );
      found?.focus();
    });
  }

  /** Points, boards and joints first, then cables: the order in which the keyboard comes to them. */
  #things(): readonly Group[] {
    const layers = this.#drawn?.scene.layers ?? [];
    return ['points', 'cables'].flatMap(
      (name) =>
        layers
          .find((layer) => layer.name === name)
          ?.shapes.filter((shape): shape is Group => shape.kind === 'group') ?? [],
    );
  }

  override render(): TemplateResult {
    const box = this.#viewBox();
    const scene = this.#drawn?.scene;
    const classes = `plan ${this.placing ? 'placing' : ''} ${this.#pointers.isPanning ? 'panning' : ''}`;
    return html`<svg
        class=${classes}
        viewBox=${`${box.x} ${box.y} ${box.width} ${box.height}`}
        role="group"
        aria-label=${`Plan: ${scene?.title ?? ''}`}
        @pointerdown=${this.#pointers.down}
        @pointermove=${this.#pointers.move}
        @pointerup=${this.#pointers.up}
        @pointercancel=${this.#pointers.cancelled}
        @wheel=${{ handleEvent: this.#wheeled, passive: false }}
        @keydown=${this.#keyed}
      >
        ${scene?.layers.map(({ name, shapes }) => svg`<g class=${name}>${this.#layer(name, shapes)}</g>`)}
        ${this.#ghostMark()}
      </svg>
      ${this.#telling()} ${this.#words()} ${this.#tools()}`;
  }

  #layer(name: string, shapes: readonly Shape[]): unknown {
    if (name !== 'points' && name !== 'cables' && name !== 'findings') return shapes.map(shapeTemplate);
    const groups = shapes.filter((shape): shape is Group => shape.kind === 'group');
    if (name === 'findings') return groups.map(markTemplate);
    const reached = this.reached ?? this.#things()[0]?.subject;
    return repeat(
      groups,
      ({ subject }) => subject,
      (group) =>
        thingTemplate(group, {
          chosen: this.chosen === group.subject,
          lit: this.lit.has(group.subject),
          movable: this.movable.has(group.subject),
          reached: reached === group.subject,
        }),
    );
  }

  #ghostMark(): SVGTemplateResult | typeof nothing {
    const position = this.ghost === null ? null : positionOfPlace(this.worked.plan, this.ghost);
    if (position === null || this.#drawn === null) return nothing;
    const [x, y] = toSheet(this.#drawn.frame, position.at);
    return svg`<circle class="ghost" cx=${x} cy=${y} r="2.4"/>`;
  }

  /** Where the thing under the hand is, told from the corners; also read out. */
  #telling(): TemplateResult {
    const chosen = this.worked.job.points.find(({ id }) => id === this.chosen && this.movable.has(id));
    const place = this.moving?.place ?? this.ghost ?? chosen?.place;
    const label = this.worked.job.points.find(({ id }) => id === (this.moving?.pointId ?? chosen?.id))?.label;
    const words =
      place === undefined || place === null
        ? ''
        : `${label === undefined ? '' : `${label}: `}${placeInWords(this.worked.plan, place)}`;
    return html`<p class="telling" role="status" ?hidden=${words === ''}>${words}</p>`;
  }

  #words(): TemplateResult {
    const storey = this.worked.plan.storeyById.get(this.storeyId)?.storey;
    if (storey === undefined || storey.walls.length === 0)
      return html`<p class="empty">
        No walls of this storey are drawn yet. Points can be listed all the same, and are priced by typical lengths.
      </p>`;
    const words = this.placing
      ? 'Tap the wall where it is to go. Escape gives up.'
      : this.movable.size > 0
        ? 'Drag the copper points along the walls. Wheel or pinch to come nearer.'
        : 'Tap a thing to see what is known of it. Wheel or pinch to come nearer.';
    return html`<p class="hint">${words}</p>`;
  }

  #tools(): TemplateResult {
    const { middle } = this.#window;
    return html`<div class="tools">
      <button aria-label="Nearer" @click=${() => this.#look(zoomed(this.#window, zoomStep, middle))}>
        <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M10 4v12M4 10h12" /></svg>
      </button>
      <button aria-label="Further away" @click=${() => this.#look(zoomed(this.#window, 1 / zoomStep, middle))}>
        <svg viewBox="0 0 20 20" aria-hidden="true"><path d="M4 10h12" /></svg>
      </button>
      <button aria-label="The whole plan" @click=${() => this.#look(null)}>
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M3 8V3h5M12 3h5v5M17 12v5h-5M8 17H3v-5" />
        </svg>
      </button>
    </div>`;
  }
}
customElements.define('plan-view', PlanView);
declare global {
  interface HTMLElementTagNameMap {
    'plan-view': PlanView;
  }
}

import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { ScreenPlan } from '#drawing/plan/screen-plan.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { SheetFrame } from '#engine/plan/sheet-frame.ts';
import type { Finding } from '#engine/rules/finding.ts';
import { FloorShown } from '../../controllers/floor-shown.ts';
import { MovedFollower } from '../../controllers/moved-follower.ts';
import { type MovedParts, nothingMoved } from '../../house/moved-parts.ts';
import { send } from '../../job-events.ts';
import { type MovedChannel, sightIn } from '../../moved/moved-channel.ts';
import type { PlanStand } from '../../moved/moved-sight.ts';
import type { PlanAsk } from '../../plan-asks.ts';
import type { DrawnWay } from '../../way-drawing/way-draft.ts';
import { controlsCss } from '../shared-styles.ts';
import { DrawnPlan, standOf } from './drawn-plan.ts';
import { drawnThings } from './drawn-things.ts';
import { inkStyles } from './ink-styles.ts';
import { markedThings } from './marked-storeys.ts';
import { PlanHand } from './plan-hand.ts';
import { actOnKey, type PlanKeys } from './plan-keys.ts';
import { hasLocks, type Looks, layersTemplate, reachedIn, thingsInOrder } from './plan-layers.ts';
import {
  figuresMm,
  footTemplate,
  gridTemplate,
  heldPoint,
  joistsTemplate,
  noticeTemplate,
  placeDrawing,
  reshapingState,
  toolsTemplate,
} from './plan-parts.ts';
import { PlanSight } from './plan-sight.ts';
import { planCss } from './plan-styles.ts';
import type { PlaceDrawing, PlanTool } from './plan-tool.ts';
import { PX_PER_UNIT, type Size } from './plan-window.ts';
import { focusThing } from './thing-template.ts';
import { ThingsInSight } from './things-in-sight.ts';
import { ToolBench } from './tool-bench.ts';
import { UnderlayPicture } from './underlay-picture.ts';
import { wayDrawing } from './way-tool.ts';

/**
 * The plan of one storey: pan, zoom, choose a thing, drag the points that may be moved along and between walls, or
 * pick a place for a new one, or draw a way. Everything can be done by mouse, finger and keyboard.
 *
 * @fires thing-chosen, point-placed, place-tapped, way-drawn, storey-shown, plan-asked
 */
export class PlanView extends LitElement {
  static override properties: PropertyDeclarations = {
    worked: { attribute: false },
    storeyId: { attribute: false },
    findings: { attribute: false },
    chosen: { attribute: false },
    lit: { attribute: false },
    movable: { attribute: false },
    moved: { attribute: false },
    asked: { attribute: false },
    large: { type: Boolean },
    drawing: { attribute: false },
    size: { state: true },
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
  /** What follows a point under the hand; null where nothing does. */
  declare moved: MovedChannel | null;
  /** What taps and keys are for in place of choosing things; null for nothing else. */
  declare asked: PlanAsk | null;
  /** True where lengths are read at arm's length: their figures are then 16 px. */
  declare large: boolean;
  /** A way that was drawn by hand, in hand or waiting; null for none. */
  declare drawing: DrawnWay | null;
  /** Of the drawing's box, px; null before it was measured. */
  declare private size: Size | null;
  declare private reached: string | null;
  /** What a screen reader is told of the last movement. */
  declare private said: string;
  readonly #plan = new DrawnPlan();
  readonly #floor = new FloorShown(this);
  readonly #underlay = new UnderlayPicture(this, () => this.#storey?.underlay);
  readonly #follower = new MovedFollower(this, () => this.moved, sightIn);
  #lit: ReadonlySet<string> = new Set();
  readonly #watch = new ResizeObserver(([entry]) => {
    const box = entry?.contentRect;
    if (box !== undefined && box.width > 0) this.size = { width: box.width, height: box.height };
  });
  readonly #sight = new PlanSight(
    () => ({ worked: this.worked, storeyId: this.storeyId, size: this.#box }),
    () => this.requestUpdate(),
  );
  readonly #things = new ThingsInSight(
    {
      worked: () => this.worked,
      storeyId: () => this.storeyId,
      drawn: () => this.#drawn,
      isMeasured: () => this.size !== null,
      showStorey: (storeyId) => send(this, 'storey-shown', { storeyId }),
    },
    this.#sight,
  );
  readonly #bench = new ToolBench({
    from: this,
    asked: () => this.asked,
    place: () => ({
      worked: this.worked,
      storeyId: this.storeyId,
      hasWalls: this.#hasWalls,
      mmPerPx: this.#mmPerPx,
      figuresMm: this.#figuresMm,
    }),
    middle: () => this.#sight.planAt(this.#box.width / 2, this.#box.height / 2),
    frame: () => this.#drawn?.frame ?? null,
    stay: () => this.#sight.stay(),
    moved: (words) => this.#say(words),
  });
  readonly #hand = new PlanHand({
    from: this,
    worked: () => this.worked,
    storeyId: () => this.storeyId,
    movable: () => this.movable,
    drawn: () => this.#drawn,
    targets: () => this.#plan.targets,
    tool: () => this.#tool,
    sight: this.#sight,
    mmPerPx: () => this.#mmPerPx,
    box: () => this.#windowBox,
    stand: () => this.#stand,
    choose: (subject) => this.#choose(subject),
    said: (words) => this.#say(words),
    changed: () => this.requestUpdate(),
  });
  readonly #keys: PlanKeys = {
    zoom: (factor) => this.#sight.zoom(factor),
    whole: () => this.#sight.whole(),
    choose: (subject) => this.#choose(subject),
    reach: (subject, by) => this.#reachNext(subject, by),
    move: (subject, key, isFine) => this.#tool === null && this.#hand.mover.byKey(subject, key, isFine),
  };

  constructor() {
    super();
    this.findings = [];
    this.chosen = null;
    this.lit = new Set();
    this.movable = new Set();
    this.moved = null;
    this.asked = null;
    this.large = false;
    this.size = null;
    this.drawing = null;
    this.reached = null;
    this.said = '';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    if (this.#window !== null) this.#watch.observe(this.#window);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#watch.disconnect();
    this.#sight.stop();
    this.#bench.stop();
    this.#hand.mover.stop();
  }

  get #tool(): PlanTool | null {
    return this.#bench.tool;
  }

  /** The part of the element that the drawing has. */
  get #window(): Element | null {
    return this.renderRoot?.querySelector('.window') ?? null;
  }

  get #windowBox(): DOMRect {
    return (this.#window ?? this).getBoundingClientRect();
  }

  get #figuresMm(): number {
    return figuresMm(this.large);
  }

  get #mmPerPx(): number {
    return this.#sight.window.scale / PX_PER_UNIT;
  }

  get #box(): Size {
    return this.size ?? { width: 600, height: 400 };
  }

  override willUpdate(changed: PropertyValues): void {
    this.#bench.take();
    const { worked, findings, storeyId, movable } = this;
    const { scale } = this.#sight.window;
    const [figuresMm, sight] = [this.#figuresMm, this.#follower.now];
    this.#plan.take({ worked, findings, storeyId, movable, scale, figuresMm, sight });
    if (changed.has('lit') || changed.has('worked')) this.#lit = drawnThings(this.worked, this.lit);
  }

  #say(words: string): void {
    this.said = words;
    this.requestUpdate();
  }

  get #drawn(): ScreenPlan | null {
    return this.#plan.now;
  }

  get #stand(): PlanStand {
    const { worked, storeyId, movable } = this;
    const { scale } = this.#sight.window;
    return standOf({ worked, storeyId, movable, scale, figuresMm: this.#figuresMm });
  }

  override updated(changed: PropertyValues): void {
    const { worked, lit, chosen } = this;
    // What was lit before does not hold back a choice, and what is put out or let go of leaves the storey as it is.
    if (changed.has('lit') && lit.size > 0) this.#things.bring(this.#lit, true);
    else if (changed.has('chosen') && chosen !== null)
      this.#things.bring(drawnThings(worked, [chosen]), true);
    else if (changed.has('storeyId')) this.#things.bring(markedThings(worked, { lit, chosen }), false);
    this.#bench.follow(this.renderRoot.querySelector('svg.plan'));
    if (this.size === null && this.#window !== null) this.#watch.observe(this.#window);
  }

  #choose(subject: string | null): void {
    if (subject !== null) this.reached = subject;
    if (subject !== null && this.#tool?.onThings) this.#tool.tapped(this.#sight.planAt(0, 0), subject);
    else send(this, 'thing-chosen', { subjectId: subject });
  }

  readonly #wheeled = (event: WheelEvent): void => {
    event.preventDefault();
    const { left, top } = this.#windowBox;
    const factor = Math.exp(-event.deltaY * (event.deltaMode === 1 ? 0.05 : 0.0016));
    this.#sight.zoom(factor, this.#sight.planAt(event.clientX - left, event.clientY - top));
  };

  readonly #keyed = (event: KeyboardEvent): void => {
    if (actOnKey(event, this.#subjectOf(event), this.#tool, this.#keys)) event.preventDefault();
  };

  /** A key let go of: what it moved has come to rest. */
  readonly #keyLetGo = (): void => this.#hand.letGo();

  /** A screen reader that presses what it stands on sends a click alone. */
  readonly #clicked = (event: MouseEvent): void => {
    const subject = this.#subjectOf(event);
    if (event.detail === 0 && subject !== null) this.#choose(subject);
  };

  #subjectOf(event: Event): string | null {
    const [first] = event.composedPath();
    return first instanceof SVGElement ? (first.dataset.subject ?? null) : null;
  }

  #reachNext(subject: string, by: 1 | -1): void {
    const things = thingsInOrder(this.#drawn?.scene);
    const at = things.findIndex((group) => group.subject === subject);
    const next = things[(at + by + things.length) % things.length];
    if (next === undefined) return;
    this.reached = next.subject;
    const spot = this.#drawn?.spots.get(next.subject);
    if (spot !== undefined) this.#things.bringSpots([spot]);
    void this.updateComplete.then(() => focusThing(this.renderRoot, next.subject));
  }

  override render(): TemplateResult {
    const drawn = this.#drawn;
    if (drawn === null) return html``;
    const seen = this.#sight.seen(drawn.frame);
    const viewBox = `${seen.x} ${seen.y} ${seen.width} ${seen.height}`;
    const drawing = this.#handDrawing(drawn.frame);
    const isBusy =
      this.#hand.mover.moving !== null ||
      (this.#tool !== null && !this.#tool.onThings && this.asked?.tool !== 'way');
    const state = `${this.#tool === null ? '' : ' placing'}${this.#hand.pointers.isPanning ? ' panning' : ''}${isBusy ? ' busy' : ''}${reshapingState(this.#aside)}`;
    return html`<div class="window"><svg
        class=${`plan${state}`}
        viewBox=${viewBox}
        role="group"
        aria-label=${`Plan, ${drawn.scene.title}${this.#tool === null ? '' : `: ${this.#tool.name}`}`}
        tabindex=${this.#tool === null ? -1 : 0}
        @pointerdown=${this.#hand.pointers.down}
        @pointermove=${this.#hand.pointers.move}
        @pointerup=${this.#hand.pointers.up}
        @pointercancel=${this.#hand.pointers.cancelled}
        @wheel=${{ handleEvent: this.#wheeled, passive: false }}
        @click=${this.#clicked}
        @contextmenu=${(event: Event) => event.preventDefault()}
        @keydown=${this.#keyed}
        @keyup=${this.#keyLetGo}
        @focusout=${this.#keyLetGo}
      >
        ${gridTemplate(drawn.frame, seen)} ${this.#underlay.template(drawn.frame)}
        ${this.#floor.isShown ? joistsTemplate(drawn.frame, this.worked, this.storeyId) : nothing}
        ${layersTemplate(drawn.scene, this.#looks(drawn, drawing.written))}
      </svg>
      <svg class=${isBusy ? 'hand busy' : 'hand'} viewBox=${viewBox} aria-hidden="true">${drawing.template}</svg>
      ${this.#hasWalls || drawn.spots.size > 0 || this.#tool !== null ? nothing : noticeTemplate(this.#storey)}
      ${toolsTemplate(this.#sight)}</div>
      ${this.#foot()}
      <p class="visually-hidden" role="status">${this.said}</p>`;
  }

  /** What of the house the tool draws otherwise; null while it holds nothing. */
  get #aside(): MovedParts | null {
    return this.#tool?.grips?.aside() ?? null;
  }

  /** What the hand is at: a point that it moves, what its tool does, or a way that was drawn and waits. */
  #handDrawing(frame: SheetFrame): PlaceDrawing {
    const { moving } = this.#hand.mover;
    const held = moving && heldPoint(this.worked, moving.pointId, this.#figuresMm);
    if (moving !== null && held !== null) return placeDrawing(frame, this.worked, moving.place, held);
    if (this.#tool !== null) return this.#tool.drawing(frame);
    return this.drawing === null ? { template: nothing, written: [] } : wayDrawing(frame, this.drawing, null);
  }

  #looks({ scene }: ScreenPlan, written: Looks['written']): Looks {
    const { chosen, movable, reached } = this;
    const movingId = this.#hand.mover.moving?.pointId ?? null;
    const aside = this.#aside ?? nothingMoved;
    return { chosen, movable, written, lit: this.#lit, movingId, aside, reached: reachedIn(scene, reached) };
  }

  #foot(): TemplateResult {
    return footTemplate({
      scale: this.#sight.window.scale,
      telling: this.#hand.mover.telling ?? this.#tool?.telling ?? null,
      movableLabels: this.worked.job.points
        .filter(({ id }) => this.movable.has(id) && this.#drawn?.spots.has(id))
        .map(({ label }) => label),
      tool: this.#tool,
      hasWalls: this.#hasWalls,
      hasLocks: this.#drawn !== null && hasLocks(this.#drawn.scene),
    });
  }

  get #storey() {
    return this.worked.plan.storeyById.get(this.storeyId)?.storey;
  }

  get #hasWalls(): boolean {
    return (this.#storey?.walls.length ?? 0) > 0;
  }
}
customElements.define('plan-view', PlanView);
declare global {
  interface HTMLElementTagNameMap {
    'plan-view': PlanView;
  }
}

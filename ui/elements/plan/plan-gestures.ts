/** How a thing may be dragged: not, at once, or by a finger only after it was held. */
export type Grip = 'none' | 'at-once' | 'by-hold';

/** What fingers, pen or mouse do on the plan, told to whoever shows it. Positions are px within the plan's box. */
export interface PlanGestures {
  /** The thing under the pointer, by subject id; null on empty ground. */
  readonly thingAt: (event: PointerEvent) => string | null;
  readonly gripOf: (subject: string) => Grip;
  readonly tapped: (subject: string | null, x: number, y: number) => void;
  readonly panned: (dx: number, dy: number) => void;
  readonly pinched: (factor: number, x: number, y: number) => void;
  readonly dragged: (subject: string, dx: number, dy: number, phase: 'begin' | 'move' | 'end') => void;
  readonly hovered: (x: number, y: number) => void;
}

interface Held {
  readonly isPen: boolean;
  readonly startX: number;
  readonly startY: number;
  x: number;
  y: number;
  readonly subject: string | null;
  readonly grip: Grip;
}

/** A hand that trembles by less than this taps, px. */
const TREMBLE_PX = 5;

/** How long a finger rests on a thing before it lifts it, ms. */
export const HOLD_MS = 400;

/** Tells taps, drags, pans and pinches apart; one thing or the ground is held at a time. */
export class PointerReader {
  readonly #held = new Map<number, Held>();
  /** Fingers that do not count until they are lifted. */
  readonly #palms = new Set<number>();
  #doing: 'nothing' | 'pan' | 'drag' | 'pinch' = 'nothing';
  #hold: ReturnType<typeof setTimeout> | null = null;
  readonly #box: () => DOMRect;
  readonly #told: PlanGestures;

  constructor(box: () => DOMRect, told: PlanGestures) {
    this.#box = box;
    this.#told = told;
  }

  get isPanning(): boolean {
    return this.#doing === 'pan' || this.#doing === 'pinch';
  }

  readonly down = (event: PointerEvent): void => {
    if (event.button !== 0 || this.#isPalm(event)) return;
    const [x, y] = this.#at(event);
    const subject = this.#told.thingAt(event);
    const grip = subject === null ? 'none' : gripFor(event, this.#told.gripOf(subject));
    this.#held.set(event.pointerId, {
      isPen: event.pointerType === 'pen',
      startX: x,
      startY: y,
      x,
      y,
      subject,
      grip,
    });
    if (grip === 'by-hold' && this.#held.size === 1 && subject !== null)
      this.#hold = setTimeout(() => this.#lift(subject), HOLD_MS);
    if (event.currentTarget instanceof Element) event.currentTarget.setPointerCapture(event.pointerId);
    if (this.#held.size === 2) this.#second();
  };

  /**
   * The hand that holds a pen rests on the glass: no finger counts while a pen is down, and one that was there before counts no
   * more.
   */
  #isPalm({ pointerId, pointerType }: PointerEvent): boolean {
    const isPenDown = [...this.#held.values()].some(({ isPen }) => isPen);
    if (pointerType === 'pen' && !isPenDown) this.#forgetFingers();
    const isPalm = pointerType === 'touch' && isPenDown;
    if (isPalm) this.#palms.add(pointerId);
    return isPalm;
  }

  #forgetFingers(): void {
    this.#holdsNoLonger();
    for (const { subject, startX, startY, x, y } of this.#held.values())
      if (this.#doing === 'drag' && subject !== null)
        this.#told.dragged(subject, x - startX, y - startY, 'end');
    for (const id of this.#held.keys()) this.#palms.add(id);
    this.#held.clear();
    this.#doing = 'nothing';
  }

  readonly move = (event: PointerEvent): void => {
    const held = this.#held.get(event.pointerId);
    const [x, y] = this.#at(event);
    if (held === undefined) {
      if (!this.#palms.has(event.pointerId)) this.#told.hovered(x, y);
      return;
    }
    if (this.#doing === 'pinch') this.#pinch(held, x, y);
    else this.#pull(held, x, y);
    held.x = x;
    held.y = y;
  };

  readonly up = (event: PointerEvent): void => this.#end(event, true);

  /** The system took the pointer away: what was dragged stays where it is. */
  readonly cancelled = (event: PointerEvent): void => this.#end(event, false);

  #at(event: PointerEvent): readonly [number, number] {
    const box = this.#box();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  /** A thing was held long enough: from now on it goes with the finger. */
  #lift(subject: string): void {
    this.#hold = null;
    if (this.#doing !== 'nothing') return;
    this.#doing = 'drag';
    // Felt, where the device can; a finger covers what it lifts.
    globalThis.navigator?.vibrate?.(15);
    this.#told.dragged(subject, 0, 0, 'begin');
  }

  #holdsNoLonger(): void {
    if (this.#hold !== null) clearTimeout(this.#hold);
    this.#hold = null;
  }

  #second(): void {
    this.#holdsNoLonger();
    for (const { subject, startX, startY, x, y } of this.#held.values())
      if (this.#doing === 'drag' && subject !== null)
        this.#told.dragged(subject, x - startX, y - startY, 'end');
    this.#doing = 'pinch';
  }

  #pull(held: Held, x: number, y: number): void {
    const far = Math.hypot(x - held.startX, y - held.startY) > TREMBLE_PX;
    if (this.#doing === 'nothing' && far) {
      this.#holdsNoLonger();
      const drags = held.grip === 'at-once';
      this.#doing = drags ? 'drag' : 'pan';
      if (drags && held.subject !== null) this.#told.dragged(held.subject, 0, 0, 'begin');
    }
    if (this.#doing === 'drag' && held.subject !== null)
      this.#told.dragged(held.subject, x - held.startX, y - held.startY, 'move');
    if (this.#doing === 'pan') this.#told.panned(x - held.x, y - held.y);
  }

  #pinch(held: Held, x: number, y: number): void {
    const other = [...this.#held.values()].find((one) => one !== held);
    if (other === undefined) return;
    const before = Math.hypot(held.x - other.x, held.y - other.y);
    const after = Math.hypot(x - other.x, y - other.y);
    this.#told.panned((x - held.x) / 2, (y - held.y) / 2);
    if (before > 0 && after > 0) this.#told.pinched(after / before, (x + other.x) / 2, (y + other.y) / 2);
  }

  #end(event: PointerEvent, meant: boolean): void {
    const held = this.#held.get(event.pointerId);
    this.#palms.delete(event.pointerId);
    if (held === undefined) return;
    this.#held.delete(event.pointerId);
    this.#holdsNoLonger();
    if (this.#doing === 'drag' && held.subject !== null)
      this.#told.dragged(held.subject, ...pulled(held), 'end');
    else if (this.#doing === 'nothing' && meant) this.#told.tapped(held.subject, held.x, held.y);
    if (this.#held.size === 0) this.#doing = 'nothing';
  }
}

/** How far a thing was pulled, px; what was lifted and trembled is put down where it was. */
function pulled({ grip, x, y, startX, startY }: Held): [number, number] {
  const [dx, dy] = [x - startX, y - startY];
  return grip === 'by-hold' && Math.hypot(dx, dy) <= TREMBLE_PX ? [0, 0] : [dx, dy];
}

/** A mouse that drags a thing means it; a finger may be pulling the house along. */
const gripFor = ({ pointerType }: PointerEvent, grip: Grip): Grip =>
  grip === 'by-hold' && pointerType !== 'touch' ? 'at-once' : grip;

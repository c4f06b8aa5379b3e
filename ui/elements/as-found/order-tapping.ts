import type { Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { PlanAnswer } from '../../plan-asks.ts';
import { counted } from '../../written.ts';
import { orderEdit, usualCable } from './order-edit.ts';

/** The order of a circuit's points as somebody makes it; null: as its cables have it. */
export interface OrderDrafted {
  readonly circuitId: string;
  readonly points: readonly string[] | null;
}

/** An order that is being made, in the list or on the plan. */
export interface OrderSight {
  readonly circuitId: string;
  readonly points: readonly string[];
  readonly isTapped: boolean;
}

/** The circuit whose points are put in order next: the only one, or the only one without cables; null where that cannot be told. */
export function circuitToOrder({ circuits, legs }: Pick<Job, 'circuits' | 'legs'>): Circuit | null {
  if (circuits.length === 1) return circuits[0] ?? null;
  const bare = circuits.filter(({ id }) => legs.every(({ circuit }) => circuit !== id));
  return bare.length === 1 ? (bare[0] ?? null) : null;
}

/** Holds the order of a circuit's points while it is made: by buttons in the list, by taps on the plan, or by both in turn. */
export class OrderTapping {
  readonly #host: ToolHost;
  readonly #view: () => JobView;
  readonly #hold: ToolHold<'order'>;
  #draft: Omit<OrderSight, 'isTapped'> | null = null;

  constructor(host: ToolHost, view: () => JobView) {
    this.#host = host;
    this.#view = view;
    this.#hold = new ToolHold(host, 'order', { answered: (answer) => this.#answered(answer) });
  }

  /** Null where no order is being made. */
  get sight(): OrderSight | null {
    return this.#draft && { ...this.#draft, isTapped: this.#hold.isHeld };
  }

  /** The list changed the order, or (null) leaves it as the cables have it. */
  drafted({ circuitId, points }: OrderDrafted): void {
    this.#draft = points === null ? null : { circuitId, points };
    if (this.#hold.isHeld && this.#draft !== null) this.#say('');
    else this.#hold.letGo();
    this.#host.requestUpdate();
  }

  /** Has the points tapped on the plan, on from what the list has so far; or ends that. */
  toggle(circuitId: string): void {
    if (this.#hold.isHeld && this.#draft?.circuitId === circuitId) {
      this.#hold.letGo();
      return;
    }
    if (this.#draft?.circuitId !== circuitId) this.#draft = { circuitId, points: [] };
    this.#say('');
  }

  get #circuit(): Circuit | undefined {
    return this.#view().job.circuits.find(({ id }) => id === this.#draft?.circuitId);
  }

  /** Asks on; where nothing else is to be said, the points so far are. */
  #say(said: string): void {
    const circuit = this.#circuit;
    if (circuit === undefined || this.#draft === null) return;
    const { points } = this.#draft;
    this.#hold.ask({
      tool: 'order',
      circuitId: circuit.id,
      name: circuit.name,
      isRing: circuit.shape !== 'radial',
      points,
      said: said === '' ? this.#soFar(circuit, points) : said,
    });
  }

  #soFar({ name }: Circuit, points: readonly string[]): string {
    const last = points.at(-1);
    if (last === undefined) return `${name}: tap its first point`;
    return `${counted(points.length, 'point')}, last ${this.#labelOf(last)}`;
  }

  #labelOf(pointId: string): string {
    return this.#view().job.points.find(({ id }) => id === pointId)?.label ?? pointId;
  }

  #answered(answer: PlanAnswer): void {
    if (this.#draft === null) return;
    const { points } = this.#draft;
    if (answer.do === 'pick') this.#picked(answer.subjectId);
    else if (answer.do === 'take-back') this.#put(points.slice(0, -1));
    else if (answer.do === 'done') this.#make();
  }

  #put(points: readonly string[]): void {
    if (this.#draft !== null) this.#draft = { ...this.#draft, points };
    this.#say('');
  }

  #picked(id: string): void {
    const point = this.#view().job.points.find((each) => each.id === id);
    const points = this.#draft?.points ?? [];
    const at = points.indexOf(id);
    if (point === undefined) return;
    if (point.status === 'wanted') this.#say(`${point.label} is not there yet`);
    else if (at >= 0) this.#say(`${point.label} is number ${at + 1} already`);
    else this.#put([...points, id]);
  }

  #make(): void {
    const { job } = this.#view();
    const circuit = this.#circuit;
    if (circuit === undefined || this.#draft === null) return;
    const legs = job.legs.filter((leg) => leg.circuit === circuit.id);
    send(this.#host, 'job-edit', orderEdit(job, circuit, this.#draft.points, usualCable(legs)));
    this.#draft = null;
    this.#hold.letGo();
  }
}

declare global {
  interface HTMLElementEventMap {
    'order-drafted': CustomEvent<OrderDrafted>;
    'order-wanted': CustomEvent<{ readonly circuitId: string }>;
  }
}

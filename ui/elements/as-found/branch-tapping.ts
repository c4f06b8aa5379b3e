import type { Place, Point } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import { addFoundJoint, addFoundSpur, addPointOnSpur } from '../../edits/found-branches.ts';
import { nextLabel } from '../../edits/next-label.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import type { PlanAnswer } from '../../plan-asks.ts';
import { newPoint } from './new-point.ts';
import { usualCable } from './order-edit.ts';
import { firstHeightMm, foundHeightMm } from './usual-heights.ts';

/** The circuit of what hangs on a point: the point's own, else that of a cable that ends there; null where neither tells. */
export function circuitOfPoint({ legs }: Pick<Job, 'legs'>, { id, circuit }: Point): string | null {
  if (circuit !== undefined) return circuit;
  const leg = legs.find(({ from, to }) => [from, to].some((end) => 'point' in end && end.point === id));
  return leg?.circuit ?? null;
}

/** Has tapped on the plan what hangs on a point by a cable of its own, and where a joint lies in a cable. */
export class BranchTapping {
  readonly #host: ToolHost;
  readonly #view: () => JobView;
  readonly #spur: ToolHold<'spur'>;
  readonly #joint: ToolHold<'joint'>;
  #fromId = '';
  #legId = '';

  constructor(host: ToolHost, view: () => JobView) {
    this.#host = host;
    this.#view = view;
    this.#spur = new ToolHold(host, 'spur', {
      placed: (place) => this.#spurTo(place),
      answered: (answer) => this.#spurAnswered(answer),
    });
    this.#joint = new ToolHold(host, 'joint', { placed: (place) => this.#jointAt(place) });
  }

  /** Waits for what hangs on a point; or, asked again, no longer. */
  spurFrom(pointId: string): void {
    const isSame = this.#spur.isHeld && this.#fromId === pointId;
    this.#fromId = pointId;
    if (isSame) this.#spur.letGo();
    else this.#askSpur('');
  }

  /** Waits for the place of a joint in a cable; or, asked again, no longer. */
  jointIn(legId: string): void {
    const isSame = this.#joint.isHeld && this.#legId === legId;
    this.#legId = legId;
    if (isSame) this.#joint.letGo();
    else this.#joint.ask({ tool: 'joint', legId, symbol: 'joint', heightMm: firstHeightMm('joint') });
  }

  get #from(): Point | undefined {
    return this.#view().job.points.find(({ id }) => id === this.#fromId);
  }

  #askSpur(said: string): void {
    const { job, library } = this.#view();
    const heightMm = foundHeightMm(job.points, 'socket-twin', library.terms.heights);
    const from = this.#from?.label ?? '';
    const words = said === '' ? `Spur from ${from}` : said;
    this.#spur.ask({ tool: 'spur', fromId: this.#fromId, symbol: 'socket-twin', heightMm, said: words });
  }

  /** The spur between the two; null where no circuit is known for it. */
  #spurOf(to: Pick<Point, 'id' | 'label'>) {
    const { job } = this.#view();
    const from = this.#from;
    const circuitId = from === undefined ? null : circuitOfPoint(job, from);
    if (from === undefined || circuitId === null) return null;
    const cable = usualCable(job.legs.filter(({ circuit }) => circuit === circuitId));
    return { legId: newId(), circuitId, from, to, cable };
  }

  #spurTo(place: Place): void {
    const made = { ...newPoint(this.#view().job, newId()), place };
    const spur = this.#spurOf(made);
    if (spur !== null) send(this.#host, 'job-edit', addPointOnSpur(made, spur));
    this.#spur.letGo();
    send(this.#host, 'thing-chosen', { subjectId: made.id });
  }

  #spurAnswered(answer: PlanAnswer): void {
    if (answer.do !== 'pick') return;
    const to = this.#view().job.points.find(({ id }) => id === answer.subjectId);
    if (to === undefined) return;
    if (to.id === this.#fromId) this.#askSpur(`${to.label} itself: tap another`);
    else if (to.status === 'wanted') this.#askSpur(`${to.label} is not there yet`);
    else {
      const spur = this.#spurOf(to);
      if (spur !== null) send(this.#host, 'job-edit', addFoundSpur(spur));
      this.#spur.letGo();
    }
  }

  #jointAt(place: Place): void {
    const { job } = this.#view();
    const leg = job.legs.find(({ id }) => id === this.#legId);
    const point = { id: newId(), label: nextLabel(job.points, false), place };
    if (leg !== undefined) send(this.#host, 'job-edit', addFoundJoint(leg, { point, legId: newId() }));
    this.#joint.letGo();
    send(this.#host, 'thing-chosen', { subjectId: point.id });
  }
}

declare global {
  interface HTMLElementEventMap {
    'spur-wanted': CustomEvent<{ readonly pointId: string }>;
    'joint-wanted': CustomEvent<{ readonly legId: string }>;
  }
}

import type { ReactiveController } from 'lit';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import type { Place, PointKind } from '#model/installation.ts';
import { ToolHold, type ToolHost } from '../../controllers/tool-hold.ts';
import { addFoundPoints } from '../../edits/points.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import type { AskOf, PlanAnswer } from '../../plan-asks.ts';
import { kindsInOrder } from './kinds-in-order.ts';
import { newPoint } from './new-point.ts';
import { circuitToOrder } from './order-tapping.ts';
import { foundHeightMm, isSameHeightKind, usualHeights } from './usual-heights.ts';

/** A point that was just tapped. */
interface Tapped {
  readonly id: string;
  readonly label: string;
}

/** Has points that were found tapped on the plan, one a tap, until it is done: of which kind, how high, what came last. */
export class PointsTapping implements ReactiveController {
  readonly #host: ToolHost;
  readonly #view: () => JobView;
  readonly #hold: ToolHold<'points'>;
  /** As they stood when the tapping began: buttons do not move from under a finger. */
  #kinds: readonly PointKind[] = [];
  #kind: PointKind = 'socket-twin';
  /** As it was last chosen for this kind; null: as the last of its kind stands. */
  #heightMm: number | null = null;
  #last: Tapped | null = null;
  /** Whether the job was seen with it: it comes with the next view. */
  #isLastSeen = false;
  #said = '';

  /** @param toOrder goes on to put the points in order. */
  constructor(host: ToolHost, view: () => JobView, toOrder: () => void) {
    this.#host = host;
    this.#view = view;
    this.#hold = new ToolHold(host, 'points', {
      placed: (place) => this.#placed(place),
      answered: (answer) => (answer.do === 'order' ? toOrder() : this.#answered(answer)),
    });
    host.addController(this);
  }

  get isOn(): boolean {
    return this.#hold.isHeld;
  }

  /** Begins, or ends. */
  toggle(): void {
    if (this.isOn) {
      this.#hold.letGo();
      return;
    }
    this.#kinds = kindsInOrder(this.#view().job.points);
    this.#kind = this.#kinds[0] ?? 'socket-twin';
    this.#heightMm = null;
    this.#say('', null);
  }

  /** What was tapped last may have been taken back. */
  hostUpdated(): void {
    const last = this.#last;
    if (last === null || !this.isOn) return;
    const isThere = this.#view().job.points.some(({ id }) => id === last.id);
    if (this.#isLastSeen && !isThere) this.#say(`${last.label} taken back`, null);
    else this.#isLastSeen = isThere;
  }

  #say(said: string, last: Tapped | null): void {
    this.#said = said;
    if (last !== this.#last) this.#isLastSeen = false;
    this.#last = last;
    this.#hold.ask(this.#ask);
  }

  get #height(): number {
    const { job, library } = this.#view();
    return this.#heightMm ?? foundHeightMm(job.points, this.#kind, library.terms.heights);
  }

  get #ask(): AskOf<'points'> {
    const { job, library } = this.#view();
    const usual = usualHeights(this.#kind, library.terms.heights).map(({ heightMm }) => heightMm);
    return {
      tool: 'points',
      kind: this.#kind,
      symbol: this.#kind,
      kinds: this.#kinds,
      heightMm: this.#height,
      heightsMm: usual,
      said: this.#said,
      mayOrder: circuitToOrder(job) !== null,
    };
  }

  #placed(place: Place): void {
    const { job } = this.#view();
    const made = { ...newPoint(job, newId()), kind: this.#kind, place };
    send(this.#host, 'job-edit', addFoundPoints([made]));
    this.#heightMm = place.heightMm;
    this.#say(`${made.label}: ${pointKindWords[made.kind].toLowerCase()}, ${place.heightMm} mm`, made);
  }

  #answered(answer: PlanAnswer): void {
    if (answer.do === 'pick') this.#picked(answer.subjectId);
    else if (answer.do === 'height') {
      this.#heightMm = answer.heightMm;
      this.#hold.ask(this.#ask);
    } else if (answer.do === 'kind') {
      if (!isSameHeightKind(answer.kind, this.#kind)) this.#heightMm = null;
      this.#kind = answer.kind;
      this.#hold.ask(this.#ask);
    }
  }

  #picked(subjectId: string): void {
    send(this.#host, 'thing-chosen', { subjectId });
    const label = this.#view().job.points.find(({ id }) => id === subjectId)?.label;
    if (label !== undefined) this.#say(`${label} is there already`, this.#last);
  }
}

import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { endWords } from '#drawing/end-words.ts';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import type { Cable, End } from '#model/cable.ts';
import type { Circuit, Leg } from '#model/installation.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { markOrder } from '../../edits/circuits.ts';
import { addLeg } from '../../edits/legs.ts';
import { markable } from '../../edits/marked.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { metresShort } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';
import { cableWords } from './cable-choices.ts';
import { foundPoints } from './end-choices.ts';
import { formCss } from './form-styles.ts';
import './leg-form.ts';
import type { OrderSight } from './order-tapping.ts';
import './ring-order.ts';
import { thingRow } from './thing-row.ts';

/** A cable by its two ends: "R1 – R2", "Board A – R1". */
const legName = ({ from, to }: Leg, labelOf: LabelOf): string =>
  [from, to]
    .map((end) => {
      const ringEnd = 'origin' in end && end.end !== undefined ? ` ${end.end}` : '';
      return endWords(end, labelOf, `Board${ringEnd}`);
    })
    .join(' – ');

/** The cables between the points as found, circuit by circuit: in order, and one by one. */
export class LegList extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    order: { attribute: false },
  };
  static override styles = [controlsCss, formCss];
  declare view: JobView;
  /** How the order of a circuit's points is being made; null where none is. */
  declare order: OrderSight | null;

  constructor() {
    super();
    this.order = null;
    keepFocus(this);
  }

  override render(): TemplateResult {
    const { circuits } = this.view.job;
    if (circuits.length === 0) return html`<p class="hint">Add a circuit first: cables belong to one.</p>`;
    return html`${circuits.map((circuit) => this.#circuit(circuit))}`;
  }

  #circuit(circuit: Circuit): TemplateResult {
    const { job, estimate } = this.view;
    const { foundRuns } = estimate.asFound.worked;
    const labelOf = labelsOf(estimate.asFound.worked);
    const legs = job.legs.filter((leg) => leg.circuit === circuit.id);
    const order = this.order?.circuitId === circuit.id ? this.order : null;
    return html`${job.circuits.length > 1 ? html`<h4>${circuit.name}</h4>` : nothing}
      <details class="less" ?open=${legs.length === 0 || order !== null}>
        <summary>${circuit.shape === 'radial' ? 'Points in order' : 'Ring in order'}</summary>
        <ring-order
          .view=${this.view}
          .circuit=${circuit}
          .drafted=${order?.points ?? null}
          .tapping=${order?.isTapped ?? false}
        ></ring-order>
      </details>
      <ul class="list">
        ${legs.map((leg) => {
          const name = legName(leg, labelOf);
          const lengthMm = leg.lengthMm ?? foundRuns.get(leg.id)?.lengthMm ?? null;
          return thingRow(this.view, {
            id: leg.id,
            name,
            facts: legWords(leg.cable, lengthMm),
            state: leg.cable === undefined ? 'cable?' : lengthMm === null ? 'length?' : '',
            wide: true,
            form: () => html`<leg-form .view=${this.view} .leg=${leg} .name=${name}></leg-form>`,
          });
        })}
      </ul>
      <div class="buttons">
        <button
          class="small"
          ?disabled=${foundPoints(job, circuit.id).length === 0}
          @click=${() => this.#add(circuit)}
        >
          Add a cable${job.circuits.length > 1 ? html` to ${circuit.name}` : nothing}
        </button>
        ${foundPoints(job, circuit.id).length === 0 ? html`<span class="hint">Add points first: a cable leads to one.</span>` : nothing}
      </div>`;
  }

  /** From the board to the first point that no cable leads to, else to the first; both ends are then chosen in its form. */
  #add(circuit: Circuit): void {
    const { job } = this.view;
    const id = newId();
    const origin: End = { origin: circuit.id };
    const found = foundPoints(job, circuit.id);
    const ends = job.legs.flatMap(({ from, to }) => [from, to]);
    const isReached = (id: string): boolean => ends.some((end) => 'point' in end && end.point === id);
    const next = found.find(({ id: pointId }) => !isReached(pointId)) ?? found[0];
    if (next === undefined) return;
    const leg = { id, circuit: circuit.id, from: origin, to: { point: next.id } };
    const edit = markable(addLeg(leg, `on ${circuit.name}`), (certainty) => markOrder(circuit, certainty));
    send(this, 'job-edit', edit);
    send(this, 'thing-chosen', { subjectId: id });
  }
}

function legWords(cable: Cable | undefined, lengthMm: number | null): string {
  const size = cable === undefined ? 'cable not known' : cableWords(cable);
  return `${size}, ${lengthMm === null ? 'length not known' : metresShort(lengthMm)}`;
}
customElements.define('leg-list', LegList);
declare global {
  interface HTMLElementTagNameMap {
    'leg-list': LegList;
  }
}

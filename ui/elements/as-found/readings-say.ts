import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import { confidenceWords } from '#drawing/proof/proof-words.ts';
import { circuitsRead, inferCircuit } from '#engine/proof/readings/infer-circuit.ts';
import type { InferredCircuit, InferredPoint } from '#engine/proof/readings/inferred-circuit.ts';
import type { Circuit } from '#model/installation.ts';
import type { Job } from '#model/job.ts';
import { circuitByReadings } from '../../edits/circuit-by-readings.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { controlsCss } from '../shared-styles.ts';
import { formCss } from './form-styles.ts';
import { orderOfLegs } from './order-of-legs.ts';

/** What would be recorded otherwise once the readings are taken over. */
const changing: ReadonlySet<string> = new Set(['order', 'ends-swapped', 'role', 'parent']);

/** What the readings say of each circuit that was read, and the offer to record it so. */
export class ReadingsSay extends LitElement {
  static override properties: PropertyDeclarations = { view: { attribute: false } };
  static override styles = [
    controlsCss,
    formCss,
    css`
      .said {
        padding: 10px 12px;
        margin: 10px 0;
        background: var(--paper);
        border: 1px solid var(--line);
        border-radius: var(--corner);
      }
      .said p {
        margin: 4px 0;
      }
      .said ul {
        margin: 4px 0;
        padding-left: 18px;
      }
      .order {
        font: 600 1rem/1.4 var(--drawing-font);
      }
      .differs {
        color: var(--ask);
        font-weight: 500;
      }
    `,
  ];
  declare view: JobView;
  /** Readings change seldom, the view at every step: what they say is worked out once for each. */
  #known: { readonly of: string; readonly circuits: readonly InferredCircuit[] } | null = null;

  override render(): TemplateResult {
    return html`${this.#circuits().map((said) => this.#said(said))}`;
  }

  #circuits(): readonly InferredCircuit[] {
    const { job } = this.view;
    const { readings, points, legs, circuits } = job;
    const of = JSON.stringify([
      readings,
      legs,
      circuits,
      points.map(({ id, label, circuit, asFound }) => [id, label, circuit, asFound]),
    ]);
    if (this.#known?.of !== of)
      this.#known = { of, circuits: circuitsRead(job).map((id) => inferCircuit(job, id)) };
    return this.#known.circuits;
  }

  #said(said: InferredCircuit): TemplateResult | typeof nothing {
    const { job, estimate } = this.view;
    const circuit = job.circuits.find(({ id }) => id === said.circuit);
    if (circuit === undefined) return nothing;
    const labelOf = labelsOf(estimate.asFound.worked);
    const { order, contradictions, causes, next, undecidable, points, legs } = said;
    return html`<section class="said" aria-label=${`What the readings say of ${circuit.name}`}>
      <strong>What the readings say: ${circuit.name}</strong>
      <p>${order.words}</p>
      ${
        order.answer === 'cannot-say'
          ? nothing
          : html`<p class="order">${order.points.map(labelOf).join(' – ')} <span class="hint">${sure(order.confidence)}</span></p>`
      }
      ${contradictions.map(({ words, confidence }) => html`<p class="differs">${words} <span class="hint">${sure(confidence)}</span></p>`)}
      ${causes.map(({ words }) => html`<p>${words}</p>`)}
      ${this.#offer(circuit, said)}
      ${listed('Next', next)}
      <details class="less">
        <summary>Points and legs by the readings</summary>
        <ul>
          ${points.map((point) => html`<li><strong>${labelOf(point.point)}</strong> ${point.words} <span class="hint">${sureOf(point)}</span></li>`)}
        </ul>
        <ul>
          ${legs.map(({ words }) => html`<li>${words}</li>`)}
        </ul>
        ${listed('Cannot be told by these readings', undecidable)}
      </details>
    </section>`;
  }

  /** Only what is told whole is offered, and only where it differs from what is recorded, or nothing is. */
  #offer(circuit: Circuit, said: InferredCircuit): TemplateResult | typeof nothing {
    const { legs } = this.view.job;
    const isRecorded = legs.some((leg) => leg.circuit === circuit.id);
    const differs = said.contradictions.some(({ kind }) => changing.has(kind));
    if (said.order.answer !== 'told' || (isRecorded && !differs)) return nothing;
    return html`<div class="buttons">
        <button class="small" @click=${() => this.#take(circuit, said)}>Record ${circuit.name} so</button>
      </div>
      <p class="hint">${
        isRecorded
          ? 'The job as recorded until now stays on the list as a copy, so that both can be looked at.'
          : 'Cables are recorded in this order, with the lengths that were read.'
      }</p>`;
  }

  #take(circuit: Circuit, said: InferredCircuit): void {
    const { job } = this.view;
    const edit = circuitByReadings({
      circuit,
      said,
      was: orderOfLegs(job, circuit),
      cable: usualCable(job, circuit.id),
    });
    const isRecorded = job.legs.some((leg) => leg.circuit === circuit.id);
    if (isRecorded) send(this, 'job-edit-beside', { edit, copyName: 'ring as recorded before' });
    else send(this, 'job-edit', edit);
  }
}

/** The cable that the circuit's recorded legs are of. */
const usualCable = ({ legs }: Job, circuitId: string) =>
  legs.find(({ circuit, cable }) => circuit === circuitId && cable !== undefined)?.cable ?? null;

const sure = (confidence: number): string => `${confidenceWords(confidence)} sure`;
const sureOf = ({ role, confidence }: InferredPoint): string =>
  role === 'cannot-say' ? '' : sure(confidence);

const listed = (
  title: string,
  items: readonly { readonly words: string }[],
): TemplateResult | typeof nothing =>
  items.length === 0
    ? nothing
    : html`<p>${title}:</p>
        <ul>${items.map(({ words }) => html`<li>${words}</li>`)}</ul>`;
customElements.define('readings-say', ReadingsSay);
declare global {
  interface HTMLElementTagNameMap {
    'readings-say': ReadingsSay;
  }
}

import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { type LabelOf, labelsOf } from '#drawing/label-of.ts';
import { type CircuitPicture, circuitPicture } from '#drawing/proof/circuit-picture.ts';
import { dropChart } from '#drawing/proof/drop-chart.ts';
import { ampsWords, limitWords, scenarioWords, shareWords, voltsWords } from '#drawing/proof/proof-words.ts';
import { readingsChart } from '#drawing/proof/readings-chart.ts';
import { circuitDiagram } from '#drawing/proof/ring-diagram.ts';
import { testLimitWords } from '#drawing/proof/test-words.ts';
import { worstOfPicture } from '#drawing/proof/worst-of-picture.ts';
import type { Scene } from '#drawing/scene.ts';
import { unitOfLoadSide } from '#engine/circuit/load-side.ts';
import type { Worked } from '#engine/connections/worked.ts';
import type { CircuitProof } from '#engine/proof/circuit-proof.ts';
import { comparedReadings } from '#engine/proof/compared-readings.ts';
import { readingsTaken } from '#engine/proof/readings/readings-taken.ts';
import type { ScenarioName } from '#engine/proof/scenarios.ts';
import { SeenSize } from '../../controllers/seen-size.ts';
import { send } from '../../job-events.ts';
import '../fields/choice-field.ts';
import '../fields/number-field.ts';
import { PX_PER_UNIT } from '../plan/plan-window.ts';
import { controlsCss } from '../shared-styles.ts';
import { shownProof } from './circuit-of.ts';
import { pointTable } from './point-table.ts';
import { proofViewCss } from './proof-view-styles.ts';
import './scene-picture.ts';
import { conductorField } from './conductor-field.ts';

/** Space beside a picture, px. */
const ASIDE_PX = 4;
/** What stands above and below the curve of the volt drop, px. */
const AROUND_PLOT_PX = 150;
/** The widest that a picture is drawn, units: beyond it the eye has to travel for nothing. */
const WIDEST = 150;
/** How true to its length a cable is drawn, units to a metre, where there is little room and where there is more. */
const UNITS_PER_M = { narrow: 1, wide: 1.4 } as const;

const allScenarios = Object.keys(scenarioWords) as readonly ScenarioName[];

/**
 * One circuit in pictures and figures: as it is wired with its currents, or the volt drop along it; what was assumed;
 * every point; what a tester should read beside what was read.
 *
 * @fires job-edit, thing-chosen, things-lit, view-shown
 */
export class ProofView extends LitElement {
  static override properties: PropertyDeclarations = {
    worked: { attribute: false },
    proofs: { attribute: false },
    shown: { attribute: false },
    circuitId: { attribute: false },
    chosen: { attribute: false },
    lit: { attribute: false },
    scenario: { state: true },
  };
  static override styles = [controlsCss, proofViewCss];
  declare worked: Worked;
  declare proofs: readonly CircuitProof[];
  declare shown: 'circuit' | 'drop';
  /** The circuit that was asked for; null for the first with cables. */
  declare circuitId: string | null;
  declare chosen: string | null;
  declare lit: ReadonlySet<string>;
  declare private scenario: ScenarioName;
  #picture: CircuitPicture | null = null;
  #labelOf: LabelOf = (id) => id;
  readonly #size = new SeenSize(this);

  constructor() {
    super();
    this.proofs = [];
    this.shown = 'circuit';
    this.circuitId = null;
    this.chosen = null;
    this.lit = new Set();
    this.scenario = 'handbook';
  }

  override willUpdate(changed: PropertyValues): void {
    if (!['worked', 'proofs', 'circuitId', 'scenario'].some((name) => changed.has(name))) return;
    const proof = this.#proof;
    this.#picture = proof === null ? null : circuitPicture(this.worked, proof, this.scenario);
    this.#labelOf = labelsOf(this.worked);
  }

  get #proof(): CircuitProof | null {
    return shownProof(this.proofs, this.circuitId);
  }

  override render(): TemplateResult {
    const proof = this.#proof;
    if (proof === null)
      return html`<p class="none">This scheme touches no circuit: there is nothing to show.</p>`;
    const picture = this.#picture;
    return html`<div class="head">
        <div class="told">
          <h2>${this.#nameOf(proof.circuit)}</h2>
          ${picture === null ? nothing : html`<p class="hint">${this.#summary(picture)}</p>`}
        </div>
        ${this.#circuitChoice(proof)}${this.#scenarioChoice(proof)}
      </div>
      ${this.#size.width === 0 ? nothing : this.#pictureOf(proof)}`;
  }

  #circuitChoice(proof: CircuitProof): TemplateResult | typeof nothing {
    if (this.proofs.length < 2) return nothing;
    const options = this.proofs.map(({ circuit }) => ({ value: circuit, label: this.#nameOf(circuit) }));
    return html`<choice-field
      label="Circuit"
      .value=${proof.circuit}
      .options=${options}
      .empty=${null}
      @field-change=${(event: CustomEvent<{ readonly value: string | null }>) => {
        event.stopPropagation();
        if (event.detail.value !== null)
          send(this, 'view-shown', { view: this.shown, circuitId: event.detail.value });
      }}
    ></choice-field>`;
  }

  #scenarioChoice({ otherScenarios }: CircuitProof): TemplateResult | typeof nothing {
    if (this.#picture === null) return nothing;
    const options = allScenarios
      .filter((name) => name === 'handbook' || otherScenarios.some(({ scenario }) => scenario === name))
      .map((value) => ({ value, label: scenarioWords[value] }));
    return html`<choice-field
      label="Loads"
      .value=${this.#picture.scenario}
      .options=${options}
      .empty=${null}
      @field-change=${(event: CustomEvent<{ readonly value: string | null }>) => {
        event.stopPropagation();
        this.scenario = allScenarios.find((name) => name === event.detail.value) ?? 'handbook';
      }}
    ></choice-field>`;
  }

  #nameOf(circuitId: string): string {
    return this.worked.proposed.circuits.find(({ id }) => id === circuitId)?.name ?? circuitId;
  }

  #pictureOf(proof: CircuitProof): TemplateResult {
    const picture = this.#picture;
    const widthMm = Math.min(WIDEST, (this.#size.width - ASIDE_PX) / PX_PER_UNIT);
    if (picture === null) return html`${this.#assumptions(proof)}`;
    return html`${this.#scene(this.#mainScene(picture, widthMm), true)}
      ${this.#assumptions(proof)}
      <section>
        <h3>Every point</h3>
        ${pointTable({
          proof,
          picture,
          labelOf: this.#labelOf,
          choose: (subjectId) => send(this, 'thing-chosen', { subjectId }),
        })}
      </section>
      <section>
        <h3>Expected against measured</h3>
        ${this.#temperature(proof)} ${this.#scene(this.#readings(proof, widthMm), false)}
        <ul>
          ${testLimitWords(proof).map((text) => html`<li>${text}</li>`)}
        </ul>
      </section>`;
  }

  #mainScene(picture: CircuitPicture, widthMm: number): Scene {
    if (this.shown === 'drop')
      return dropChart(picture, { widthMm, plotMm: (this.#size.height - AROUND_PLOT_PX) / PX_PER_UNIT });
    const device = this.worked.proposed.circuits.find(({ id }) => id === picture.circuitId)?.device ?? null;
    const unitsPerM = widthMm < 100 ? UNITS_PER_M.narrow : UNITS_PER_M.wide;
    return circuitDiagram(picture, {
      widthMm,
      unitsPerM,
      rating: device === null ? '' : `${device.ratingA} A`,
    });
  }

  #readings(proof: CircuitProof, widthMm: number): Scene {
    const phase = this.worked.scheme === null ? 'before' : 'after';
    const compared = comparedReadings(proof, readingsTaken(this.worked.job), phase);
    return readingsChart({
      compared,
      phase,
      conductorC: proof.expected.conductorC,
      widthMm: Math.min(widthMm, 120),
      labelOf: (id) => this.#labelOf(unitOfLoadSide(id)),
    });
  }

  /** What the conductors are at in the test: the job's, for all circuits. */
  #temperature({ expected }: CircuitProof): TemplateResult {
    return conductorField(this, expected, 'Empty: 20. An unloaded circuit is as warm as its walls.');
  }

  #scene(scene: Scene, follows: boolean): TemplateResult {
    // A part of a cut leg is known to the job as the leg, and a unit by its supply side.
    const known = new Map(this.#picture?.legs.map(({ id, subject }) => [id, subject]));
    const asDrawn = (id: string): string => known.get(id) ?? unitOfLoadSide(id);
    return html`<scene-picture
      .scene=${scene}
      .chosen=${this.chosen === null ? null : asDrawn(this.chosen)}
      .lit=${new Set([...this.lit].map(asDrawn))}
      ?follows=${follows}
    ></scene-picture>`;
  }

  /** The worst of the picture in a sentence. */
  #summary(picture: CircuitPicture): string {
    const { leg: worst, far } = worstOfPicture(picture);
    return [
      ...(worst === null
        ? []
        : [
            `Most loaded: ${worst.from} to ${worst.to}, ${ampsWords(worst.leg.currentA)}, ${shareWords(worst.leg.share)}.`,
          ]),
      ...(far === null
        ? []
        : [
            `Greatest volt drop: ${far.label}, ${voltsWords(far.dropV)} of ${limitWords(picture.dropLimitV)}.`,
          ]),
    ].join(' ');
  }

  #assumptions(proof: CircuitProof): TemplateResult {
    const other = proof.otherScenarios.find(({ scenario }) => scenario === this.#picture?.scenario);
    const [handbook, ...standing] = proof.assumptions;
    const words = other === undefined ? proof.assumptions : [...other.assumptions, ...standing];
    return html`<section>
      <h3>Taken for granted</h3>
      <ul>
        ${(handbook === undefined ? [] : words).map((text) => html`<li>${text}</li>`)}
      </ul>
    </section>`;
  }
}
customElements.define('proof-view', ProofView);
declare global {
  interface HTMLElementTagNameMap {
    'proof-view': ProofView;
  }
}

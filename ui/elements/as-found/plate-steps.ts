import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Circuit, Point } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { markableEntry } from '../../edits/marked.ts';
import { type FoundFact, setFoundFact, setPointCertainty } from '../../edits/points.ts';
import { type JobEdit, send } from '../../job-events.ts';
import { controlsCss } from '../shared-styles.ts';
import { coreColours, foundRoles } from './found-words.ts';

/** One thing that one sees behind a plate, with the answers that are mostly given. */
interface PlateStep<V> {
  readonly fact: FoundFact;
  readonly question: string;
  readonly unit: string;
  readonly answers: readonly { readonly value: V; readonly label: string }[];
  readonly set: (point: Point, value: V | null) => JobEdit;
}

const numbers = (...values: readonly number[]) => values.map((value) => ({ value, label: String(value) }));

/** Depths in which back boxes are sold, mm. Common practice, no source. */
const boxDepth: PlateStep<number> = {
  fact: 'boxDepthMm',
  question: 'Depth of its box, mm',
  unit: 'mm',
  answers: numbers(16, 25, 35, 47),
  set: (point, depthMm) => setFoundFact(point, 'boxDepthMm', depthMm),
};
const cables: PlateStep<number> = {
  fact: 'cablesSeen',
  question: 'Cables in it',
  unit: '',
  answers: numbers(1, 2, 3, 4),
  set: (point, count) => setFoundFact(point, 'cablesSeen', count),
};
const colours: PlateStep<NonNullable<Circuit['colours']>> = {
  fact: 'colours',
  question: 'Cores',
  unit: '',
  answers: coreColours,
  set: (point, value) => setFoundFact(point, 'colours', value),
};
const role: PlateStep<'ring' | 'spur'> = {
  fact: 'role',
  question: 'It is',
  unit: '',
  answers: foundRoles,
  set: (point, value) => setFoundFact(point, 'role', value),
};
/** In round figures, as one sees it. Common practice, no source. */
const slack: PlateStep<number> = {
  fact: 'slackMm',
  question: 'Slack of the cables',
  unit: 'mm',
  answers: [{ value: 0, label: 'None' }, ...[50, 100, 200].map((value) => ({ value, label: `${value} mm` }))],
  set: (point, slackMm) => setFoundFact(point, 'slackMm', slackMm),
};

/**
 * What a plate showed, by large buttons that a thumb finds: one press an answer, the same press again takes it back. Then on to
 * the next plate. What is none of the usual answers is typed below.
 *
 * @fires job-edit, fact-asked
 */
export class PlateSteps extends LitElement {
  static override properties: PropertyDeclarations = {
    point: { attribute: false },
    next: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: grid;
        gap: 8px;
      }
      .question {
        margin: 0 0 3px;
        font-weight: 500;
        font-size: 0.875rem;
        color: var(--ink-soft);
      }
      .answers {
        display: flex;
        flex-wrap: wrap;
        gap: 6px;
      }
      .answers button {
        flex: 1 0 auto;
        min-width: 56px;
        min-height: 44px;
      }
      .next {
        width: 100%;
        min-height: 44px;
      }
    `,
  ];
  declare point: Point;
  /** The point whose plate comes next; null after the last. */
  declare next: Pick<Point, 'id' | 'label'> | null;

  constructor() {
    super();
    this.next = null;
  }

  /** Goes to the first answer. */
  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector('button')?.focus(options);
  }

  override render(): TemplateResult {
    return html`${this.#step(boxDepth)} ${this.#step(cables)} ${this.#step(colours)} ${this.#step(role)}
      ${this.#step(slack)} ${this.#next()}`;
  }

  #step<V>(step: PlateStep<V>): TemplateResult {
    const now: unknown = this.point.asFound?.[step.fact];
    const isOther = now !== undefined && step.answers.every(({ value }) => value !== now);
    const id = `q-${step.fact}`;
    return html`<div>
      <p class="question" id=${id}>${step.question}${isOther ? `: ${now} ${step.unit}` : nothing}</p>
      <div class="answers" role="group" aria-labelledby=${id}>
        ${step.answers.map(
          ({ value, label }) => html`<button
            aria-pressed=${value === now}
            @click=${() => this.#answer(step, value === now ? null : value)}
          >
            ${label}
          </button>`,
        )}
      </div>
    </div>`;
  }

  #answer<V>({ fact, set }: PlateStep<V>, value: V | null): void {
    const { point } = this;
    const sure = (certainty: Certainty): JobEdit => setPointCertainty(point, fact, certainty);
    send(this, 'job-edit', markableEntry(set(point, value), value, sure));
  }

  #next(): TemplateResult | typeof nothing {
    const { next } = this;
    if (next === null) return nothing;
    const detail = { subjectId: next.id, fact: 'plate' };
    return html`<button
      class="next main"
      @click=${() => this.dispatchEvent(new CustomEvent('fact-asked', { detail, bubbles: true, composed: true }))}
    >
      Next plate: ${next.label}
    </button>`;
  }
}
customElements.define('plate-steps', PlateSteps);
declare global {
  interface HTMLElementTagNameMap {
    'plate-steps': PlateSteps;
  }
}

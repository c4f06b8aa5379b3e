import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { labelsOf } from '#drawing/label-of.ts';
import { boxChoices } from '#engine/box-choices.ts';
import type { ShallowBox } from '#engine/schemes/shallow-boxes.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { setPointFact } from '../../edits/points.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { poundsMore } from '../../written.ts';
import { controlsCss } from '../shared-styles.ts';

/** Boxes found too shallow: each exchanged or under a spacer frame, and what the other of the two comes to. */
export class BoxWays extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    scheme: { attribute: false },
    worked: { state: true },
    open: { state: true },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        margin: 0 0 10px;
      }
      ul {
        margin: 0;
        padding: 0;
        list-style: none;
      }
      li {
        display: grid;
        grid-template-columns: 1fr auto;
        gap: 4px 10px;
        align-items: center;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
      }
      strong {
        font-weight: 600;
        white-space: nowrap;
      }
      .now {
        display: block;
      }
    `,
  ];
  declare view: JobView;
  declare scheme: Scheme;
  /** What was worked out, and for which job. */
  declare private worked: {
    readonly job: Job;
    readonly schemeId: string;
    readonly all: readonly ShallowBox[];
  } | null;
  declare private open: boolean;
  #later: ReturnType<typeof setTimeout> | null = null;

  constructor() {
    super();
    keepFocus(this);
    this.worked = null;
    this.open = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#forget();
  }

  override updated(): void {
    if (this.open && !this.view.moving && !this.#isWorked) this.#workSoon();
  }

  override render(): TemplateResult | typeof nothing {
    const boxes = (this.view.scheme?.boxes ?? []).filter(
      ({ cause }) => cause === 'third-cable' || cause === 'too-shallow',
    );
    if (boxes.length === 0) return nothing;
    return html`<details
      ?open=${this.open}
      @toggle=${(event: Event) => {
        this.open = (event.target as HTMLDetailsElement).open;
      }}
    >
      <summary>Boxes found too shallow: exchange, or a spacer frame</summary>
      ${this.open ? this.#all() : nothing}
    </details>`;
  }

  get #isWorked(): boolean {
    return this.worked?.job === this.view.job && this.worked.schemeId === this.scheme.id;
  }

  /** In a task of its own, when the hand rests: each box is worked and priced whole. */
  #workSoon(): void {
    this.#forget();
    this.#later = setTimeout(() => {
      const { job, library } = this.view;
      this.worked = { job, schemeId: this.scheme.id, all: boxChoices(job, library, this.scheme.id) };
    }, 50);
  }

  #forget(): void {
    if (this.#later !== null) clearTimeout(this.#later);
    this.#later = null;
  }

  #all(): TemplateResult {
    if (this.worked === null || this.worked.schemeId !== this.scheme.id)
      return html`<p class="hint" role="status">Working them out…</p>`;
    if (this.worked.all.length === 0)
      return html`<p class="hint">No spacer frame is deep enough for what goes on them.</p>`;
    return html`<p class="hint">What is chosen here holds for the point in every scheme.</p>
      <ul aria-busy=${String(!this.#isWorked)}>
        ${this.worked.all.map((box) => this.#box(box))}
      </ul>`;
  }

  #box({ pointId, foundMm, wantedMm, frameMm, isFramed, otherPence }: ShallowBox): TemplateResult {
    const label = labelsOf(this.view.scheme?.worked ?? this.view.estimate.asFound.worked)(pointId);
    const frame = `a spacer frame of ${frameMm} mm, the plate that much further out`;
    const [now, other] = isFramed ? [frame, 'a deeper box'] : ['a deeper box', frame];
    const point = { id: pointId, label };
    return html`<li>
      <span>
        ${label}: ${foundMm} mm found, ${wantedMm} mm wanted
        <span class="hint now">Now: ${now}.</span>
        Instead: ${other} <strong>${poundsMore(otherPence)}</strong>
      </span>
      <button
        class="small"
        aria-label=${`${label}: ${other} instead`}
        @click=${() => send(this, 'job-edit', setPointFact(point, 'shallowBox', isFramed ? null : 'frame'))}
      >
        ${isFramed ? 'Deeper box' : 'Spacer frame'}
      </button>
    </li>`;
  }
}
customElements.define('box-ways', BoxWays);
declare global {
  interface HTMLElementTagNameMap {
    'box-ways': BoxWays;
  }
}

import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { answerPlan } from '../../controllers/tool-hold.ts';
import { send } from '../../job-events.ts';
import type { AskOf, PlanAsk } from '../../plan-asks.ts';
import '../as-found/kind-bar.ts';
import '../house/reshape-bar.ts';
import { controlsCss } from '../shared-styles.ts';

/**
 * What stands below the plan while a tool is in hand: what was done last, how it is taken back, and how the tool is put away. A
 * phone has no Escape, and the button that asked may be out of sight.
 *
 * @fires plan-answered, plan-asked, undo-asked
 */
export class ToolBar extends LitElement {
  static override properties: PropertyDeclarations = {
    ask: { attribute: false },
    undoLabel: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
        padding: 6px 12px;
        background: var(--copper-wash);
        border-top: 1px solid var(--line);
      }
      .row {
        display: flex;
        gap: 8px;
        align-items: center;
      }
      .said {
        flex: 1;
        min-width: 0;
        overflow: hidden;
        font-weight: 500;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      kind-bar {
        margin-top: 6px;
      }
      @media (max-width: 43.75em), (max-height: 37.5em) {
        :host {
          padding: 4px 8px;
        }
        button {
          min-height: 44px;
        }
        /* What was done has a line to itself, also before anything was: nothing shifts under the finger. */
        .row {
          flex-wrap: wrap;
          justify-content: flex-end;
        }
        .said {
          flex: 1 0 100%;
          min-height: 1.45em;
        }
        .row button {
          flex: 1 0 auto;
        }
      }
      /* A phone on its side has width, and no height to give away. */
      @media (max-height: 37.5em) {
        .row {
          flex-wrap: nowrap;
        }
        .said {
          flex: 1 1 0;
        }
        .row button {
          flex: none;
        }
      }
    `,
  ];
  declare ask: PlanAsk;
  /** The last change to the job, which taking back undoes; null for none. */
  declare undoLabel: string | null;

  constructor() {
    super();
    this.undoLabel = null;
  }

  override render(): TemplateResult | typeof nothing {
    const { ask } = this;
    switch (ask.tool) {
      case 'points':
        return this.#points(ask);
      case 'order':
        return this.#order(ask);
      case 'place':
      case 'wall':
      case 'joint':
        return html`<div class="row">${this.#stop('Stop')}</div>`;
      case 'spur':
        return this.#row(ask.said, this.#stop('Stop'));
      case 'reshape':
        return html`<reshape-bar .ask=${ask} .undoLabel=${this.undoLabel}></reshape-bar>`;
      case 'spots':
        return this.#spots(ask);
      case 'way':
        return nothing;
    }
  }

  #row(said: string, buttons: TemplateResult): TemplateResult {
    return html`<div class="row"><span class="said" role="status" title=${said}>${said}</span>${buttons}</div>`;
  }

  #stop(words: string): TemplateResult {
    return html`<button class="main" @click=${() => askPlan(this, null)}>${words}</button>`;
  }

  #points(ask: AskOf<'points'>): TemplateResult {
    const { undoLabel } = this;
    return html`${this.#row(
      ask.said,
      html`<button
          ?disabled=${undoLabel === null}
          aria-label=${undoLabel === null ? 'Take back' : `Take back: ${undoLabel}`}
          @click=${() => send(this, 'undo-asked', null)}
        >
          Take back
        </button>
        ${ask.mayOrder ? html`<button @click=${() => answerPlan(this, { do: 'order' })}>In order</button>` : nothing}
        ${this.#stop('Done')}`,
    )}
      <kind-bar
        .kinds=${ask.kinds}
        .kind=${ask.kind}
        .heightsMm=${ask.heightsMm}
        .heightMm=${ask.heightMm}
      ></kind-bar>`;
  }

  #spots({ said, spots, done }: AskOf<'spots'>): TemplateResult {
    return this.#row(
      said,
      html`<button ?disabled=${spots.length === 0} @click=${() => answerPlan(this, { do: 'take-back' })}>
          Take back
        </button>
        <button class=${done === null ? 'main' : 'quiet'} @click=${() => askPlan(this, null)}>Stop</button>
        ${done === null ? nothing : html`<button class="main" @click=${() => answerPlan(this, { do: 'done' })}>${done}</button>`}`,
    );
  }

  #order(ask: AskOf<'order'>): TemplateResult {
    return this.#row(
      ask.said,
      html`<button ?disabled=${ask.points.length === 0} @click=${() => answerPlan(this, { do: 'take-back' })}>
          Take back
        </button>
        <button class="quiet" @click=${() => askPlan(this, null)}>Stop</button>
        <button class="main" ?disabled=${ask.points.length === 0} @click=${() => answerPlan(this, { do: 'done' })}>
          Make the cables
        </button>`,
    );
  }
}
customElements.define('tool-bar', ToolBar);
declare global {
  interface HTMLElementTagNameMap {
    'tool-bar': ToolBar;
  }
}

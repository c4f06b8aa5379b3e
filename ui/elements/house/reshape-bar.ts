import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { answerPlan } from '../../controllers/tool-hold.ts';
import { partOfKey } from '../../house/house-parts.ts';
import type { PartLength } from '../../house/part-lengths.ts';
import { send } from '../../job-events.ts';
import type { AskOf } from '../../plan-asks.ts';
import { controlsCss } from '../shared-styles.ts';
import { lengthField } from './own-fields.ts';

/**
 * What stands below the plan while walls, corners and fixtures are moved: what was done, the lengths of what is in hand, to be typed
 * exactly, how a part of a wall is marked, and how it ends.
 *
 * @fires plan-answered, plan-asked, undo-asked
 */
export class ReshapeBar extends LitElement {
  static override properties: PropertyDeclarations = {
    ask: { attribute: false },
    undoLabel: { attribute: false },
  };
  static override styles = [
    controlsCss,
    css`
      :host {
        display: block;
      }
      .row,
      .lengths {
        display: flex;
        gap: 8px;
        align-items: center;
      }
      .lengths {
        align-items: flex-end;
      }
      .said {
        flex: 1;
        min-width: 0;
        overflow: hidden;
        font-weight: 500;
        text-overflow: ellipsis;
        white-space: nowrap;
      }
      /* Room for the fields before there are any: the plan must not shift under the hand that takes a wall. */
      .lengths {
        min-height: 72px;
        margin-bottom: 6px;
      }
      .lengths > .hint {
        max-width: none;
        margin: 0;
      }
      .lengths > * {
        flex: 1 1 0;
        min-width: 0;
        max-width: 18rem;
      }
      @media (max-width: 43.75em), (max-height: 37.5em) {
        /* Of four fields the words take two lines. */
        .lengths {
          min-height: 88px;
        }
        button {
          min-height: 44px;
        }
        .row {
          flex-wrap: wrap;
          justify-content: flex-end;
        }
        .said {
          flex: 1 0 100%;
          min-height: 1.45em;
          white-space: normal;
        }
        .row button {
          flex: 1 0 auto;
        }
      }
    `,
  ];
  declare ask: AskOf<'reshape'>;
  /** The last change to the job, which taking back undoes; null for none. */
  declare undoLabel: string | null;

  constructor() {
    super();
    this.undoLabel = null;
  }

  override render(): TemplateResult {
    const { said, lengths } = this.ask;
    const part = this.ask.part === null ? null : partOfKey(this.ask.part);
    const words = said === '' && part === null ? 'Tap a wall, a corner or what is fixed, then drag it' : said;
    return html`<div class="lengths">
        ${lengths.length === 0 ? html`<p class="hint">The lengths of what is in hand are typed here.</p>` : lengths.map((length) => this.#length(length))}
      </div>
      <div class="row">
        <span class="said" role="status" title=${words}>${words}</span>
        ${part?.part === 'wall' ? html`<button @click=${() => answerPlan(this, { do: 'part-of-wall' })}>Push a part of it</button>` : nothing}
        ${part?.part === 'stretch' && this.ask.behind !== null ? html`<button @click=${() => answerPlan(this, { do: 'other-side' })}>Measure in ${this.ask.behind}</button>` : nothing}
        <button
          ?disabled=${this.undoLabel === null}
          aria-label=${this.undoLabel === null ? 'Take back' : `Take back: ${this.undoLabel}`}
          @click=${() => send(this, 'undo-asked', null)}
        >
          Take back
        </button>
        <button class="main" @click=${() => askPlan(this, null)}>Done</button>
      </div>`;
  }

  /** A length of what is in hand: typed, it moves, or is marked there. */
  #length({ id, words, lengthMm, leastMm }: PartLength): TemplateResult {
    return lengthField({
      label: words,
      value: lengthMm === null ? null : Math.round(lengthMm * 10) / 10,
      min: leastMm,
      needed: lengthMm !== null,
      took: (mm) => {
        if (mm !== null) answerPlan(this, { do: 'length', id, mm });
      },
    });
  }
}
customElements.define('reshape-bar', ReshapeBar);
declare global {
  interface HTMLElementTagNameMap {
    'reshape-bar': ReshapeBar;
  }
}

import { css, html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { askPlan } from '../../controllers/plan-given-up.ts';
import { answerPlan } from '../../controllers/tool-hold.ts';
import { partOfKey } from '../../house/house-parts.ts';
import { moveForDepth, type WallDepth } from '../../house/wall-depths.ts';
import { send } from '../../job-events.ts';
import type { AskOf } from '../../plan-asks.ts';
import { controlsCss } from '../shared-styles.ts';
import { lengthField } from './own-fields.ts';

/**
 * What stands below the plan while walls and corners are moved: what was done, how deep the rooms beside the wall in hand are, to be
 * typed exactly, and how it ends.
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
      .depths {
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
      /* Room for the fields before there are any: the plan must not shift under the hand that takes a wall. */
      .depths {
        min-height: 72px;
        margin-bottom: 6px;
      }
      .depths > .hint {
        max-width: none;
        margin: 0;
      }
      .depths > * {
        flex: 1 1 0;
        min-width: 0;
        max-width: 18rem;
      }
      @media (max-width: 43.75em), (max-height: 37.5em) {
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
    const { said, depths, part } = this.ask;
    const words = said === '' && part === null ? 'Tap a wall or a corner, then drag it' : said;
    return html`<div class="depths">
        ${depths.length === 0 ? html`<p class="hint">How far a wall in hand stands from what is across the room is typed here.</p>` : depths.map((depth) => this.#depth(depth))}
      </div>
      <div class="row">
        <span class="said" role="status" title=${words}>${words}</span>
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

  /** A side that ends at the wall in hand: typed, the wall moves. */
  #depth(depth: WallDepth): TemplateResult {
    return lengthField({
      label: depth.words,
      value: Math.round(depth.lengthMm * 10) / 10,
      needed: true,
      took: (mm) => {
        const part = this.ask.part === null ? null : partOfKey(this.ask.part);
        if (mm === null || part?.part !== 'wall') return;
        const asked = { ...part, byMm: moveForDepth(depth, mm) };
        answerPlan(this, { do: 'reshape', asked, byKeys: false });
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

import { css, html, LitElement, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import { pointKindWords } from '#drawing/point-kind-words.ts';
import { drawSymbol } from '#drawing/symbols.ts';
import { sheetPoint } from '#engine/plan/sheet-frame.ts';
import type { PointKind } from '#model/installation.ts';
import { answerPlan } from '../../controllers/tool-hold.ts';
import '../fields/number-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { inkStyles } from '../plan/ink-styles.ts';
import { shapeTemplate } from '../plan/shape-template.ts';
import { controlsCss } from '../shared-styles.ts';

/** What a kind is called where there is little room. */
const shortWords: Readonly<Record<PointKind, string>> = {
  'socket-twin': 'Twin',
  'socket-single': 'Single',
  'fused-unit': 'Fused unit',
  'flex-outlet': 'Flex outlet',
  'dp-switch': 'DP switch',
  'cooker-control': 'Cooker',
  grid: 'Grid',
  shaver: 'Shaver',
  joint: 'Joint',
  blank: 'Blank',
  other: 'Other',
};

/**
 * What the next taps on the plan are: a kind, by its symbol and name, and how high it stands.
 *
 * @fires plan-answered
 */
export class KindBar extends LitElement {
  static override properties: PropertyDeclarations = {
    kinds: { attribute: false },
    kind: { attribute: false },
    heightsMm: { attribute: false },
    heightMm: { attribute: false },
  };
  static override styles = [
    controlsCss,
    inkStyles,
    css`
      :host {
        display: grid;
        gap: 6px;
      }
      .kinds,
      .heights {
        display: flex;
        gap: 6px;
        align-items: center;
      }
      .kinds {
        overflow-x: auto;
        padding: 3px;
        margin: -3px;
        scrollbar-width: thin;
      }
      .kinds button {
        flex: 0 0 auto;
        padding: 2px 10px 2px 4px;
        white-space: nowrap;
      }
      .kinds svg {
        width: 26px;
        height: 26px;
      }
      .heights number-field {
        width: 7.5rem;
      }
      @media (max-width: 43.75em), (max-height: 37.5em) {
        button {
          min-width: 44px;
          min-height: 44px;
        }
      }
      @media (max-height: 37.5em) {
        :host {
          grid-template-columns: minmax(0, 1fr) auto;
        }
      }
    `,
  ];
  /** Likeliest first. */
  declare kinds: readonly PointKind[];
  declare kind: PointKind;
  declare heightsMm: readonly number[];
  declare heightMm: number;

  override render(): TemplateResult {
    return html`<div class="kinds" role="group" aria-label="What the next taps are">
        ${this.kinds.map(
          (kind) => html`<button
            title=${pointKindWords[kind]}
            aria-pressed=${kind === this.kind}
            @click=${() => answerPlan(this, { do: 'kind', kind })}
          >
            ${symbolTemplate(kind)} ${shortWords[kind]}
          </button>`,
        )}
      </div>
      <div class="heights" role="group" aria-label="Their height above the floor, to the middle">
        ${this.heightsMm.map(
          (heightMm) => html`<button
            aria-label=${`${heightMm} mm high`}
            aria-pressed=${heightMm === this.heightMm}
            @click=${() => answerPlan(this, { do: 'height', heightMm })}
          >
            ${heightMm}
          </button>`,
        )}
        <number-field
          label="Height above the floor"
          label-hidden
          .unit=${'mm'}
          .min=${0}
          .max=${20_000}
          .value=${this.heightMm}
          @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
            event.stopPropagation();
            const { value } = event.detail;
            if (value !== null) answerPlan(this, { do: 'height', heightMm: value });
          }}
        ></number-field>
      </div>`;
  }
}

/** A kind's symbol as the plan has it: on the wall, which is above it here. */
const symbolTemplate = (kind: PointKind): TemplateResult =>
  html`<svg viewBox="-3.6 -0.8 7.2 7.2" aria-hidden="true">
    ${svg`<path class="wall-line" d="M-3 0H3" stroke="currentcolor" stroke-width="0.25"/>`}
    ${drawSymbol(kind, { at: sheetPoint(0, 0), into: [0, 1] }, 'found').map(shapeTemplate)}
  </svg>`;
customElements.define('kind-bar', KindBar);
declare global {
  interface HTMLElementTagNameMap {
    'kind-bar': KindBar;
  }
}

import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import {
  bandSaid,
  expectedSaid,
  limitSaid,
  readSaid,
  rightOf,
  testName,
  verdictSaid,
  verdictWord,
} from '#drawing/work/test-sheet-words.ts';
import type { Outcome } from '#engine/rules/finding.ts';
import { shownBy } from '#engine/work/tests/answering-reading.ts';
import type { SheetTest, TestVerdict } from '#engine/work/tests/sheet-test.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/number-field.ts';
import '../../fields/yes-no-field.ts';
import '../../outcome-mark.ts';
import { controlsCss } from '../../shared-styles.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** The greatest figure that a field takes; the job file takes no more. */
const MOST = { Ω: 1e7, MΩ: 1e6, kA: 1000, ms: 1e5 } as const;

const outcomes: Readonly<Record<Exclude<TestVerdict, 'not-read'>, Outcome>> = {
  fits: 'passes',
  look: 'decide',
  fails: 'fails',
  read: 'advice',
};

/**
 * One test: what it is of, what is expected and must be, the field for what was read, and how it came out.
 *
 * @fires test-answered - detail: { test, value }; null takes the reading away
 */
export class TestRow extends LitElement {
  static override properties: PropertyDeclarations = { test: { attribute: false } };
  static override styles = [
    controlsCss,
    workSheetCss,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr) 9.5rem;
        gap: 2px 12px;
        padding: 8px 0;
        border-top: 1px solid var(--rule);
        break-inside: avoid;
      }
      .of strong {
        font-family: var(--drawing-font);
      }
      .verdict {
        grid-column: 1 / -1;
        margin: 2px 0 0;
        padding: 4px 10px;
        border-left: 4px solid var(--line);
      }
      .verdict[data-verdict='fits'] {
        border-left-color: var(--pass);
      }
      .verdict[data-verdict='look'] {
        background: var(--ask-wash);
        border-left-color: var(--ask);
      }
      .verdict[data-verdict='fails'] {
        border-left-color: var(--fail);
      }
      .written {
        display: none;
      }
      @media print {
        number-field,
        yes-no-field {
          display: none;
        }
        .written {
          display: block;
          align-self: end;
          min-height: 7mm;
          text-align: right;
          border-bottom: 0.25mm solid #000;
        }
      }
    `,
  ];
  declare test: SheetTest;

  override render(): TemplateResult {
    const { test } = this;
    const { room, isKept, verdict } = test;
    return html`<div class="of">
        <strong>${testName(test)}</strong>${room === null ? nothing : html` <span class="soft">${room}</span>`}
        <div class="soft">${heldTo(test)}</div>
      </div>
      ${isKept ? this.#field() : html`<span class="soft screen">On paper: no point of the job stands for it.</span>`}
      <span class="written">${readSaid(test)}</span>
      <div role="status" class=${verdict === 'not-read' ? 'visually-hidden' : 'verdict'} data-verdict=${verdict}>
        ${
          verdict === 'not-read'
            ? nothing
            : html`<outcome-mark outcome=${outcomes[verdict]}></outcome-mark>
                <strong>${verdictWord[verdict]}.</strong> ${verdictSaid(test)}`
        }
      </div>`;
  }

  #field(): TemplateResult {
    const { test } = this;
    const { unit, reading } = test;
    const shown = reading === null ? null : shownBy(reading);
    const label = fieldLabel(test);
    if (unit === null)
      return html`<yes-no-field
        .label=${label}
        .value=${typeof shown === 'boolean' ? shown : null}
        @field-change=${(event: CustomEvent<FieldChange<boolean | null>>) => this.#tell(event)}
      ></yes-no-field>`;
    return html`<number-field
      label-hidden
      .label=${label}
      .unit=${unit}
      .min=${0}
      .max=${MOST[unit]}
      .value=${typeof shown === 'number' ? shown : null}
      @field-change=${(event: CustomEvent<FieldChange<number | null>>) => this.#tell(event)}
    ></number-field>`;
  }

  #tell(event: CustomEvent<FieldChange<number | boolean | null>>): void {
    event.stopPropagation();
    const { value } = event.detail;
    this.dispatchEvent(
      new CustomEvent('test-answered', { detail: { test: this.test, value }, bubbles: true, composed: true }),
    );
  }
}

/** What the field asks: of what is right or wrong a question, which is seen; else only heard, for the row says it. */
const fieldLabel = ({ asked, unit, mark, subject, at }: SheetTest): string => {
  if (unit === null) return rightOf(asked).asks;
  return at === subject ? `Reading at ${mark}` : `Reading, ${mark}`;
};

/** What a reading is held to: "Expected 0.24 Ω, band 0.19 to 0.29 Ω; limit at most 1.09 Ω". */
function heldTo(test: SheetTest): string {
  const [expected, limit] = [expectedSaid(test), limitSaid(test)];
  const held = [
    ...(expected === '' ? [] : [`Expected ${expected}, band ${bandSaid(test)}`]),
    ...(limit === '' || test.limit === null
      ? []
      : [test.limit.bound === 'right' ? `Must be: ${limit}` : `Limit: ${limit}`]),
  ];
  return held.length === 0 ? 'Nothing can be expected yet: write down what it shows.' : `${held.join('; ')}.`;
}

customElements.define('test-row', TestRow);
declare global {
  interface HTMLElementTagNameMap {
    'test-row': TestRow;
  }
  interface HTMLElementEventMap {
    'test-answered': CustomEvent<{ readonly test: SheetTest; readonly value: number | boolean | null }>;
  }
}

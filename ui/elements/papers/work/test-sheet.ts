import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { BAND_SAID, limitsFrom, progressSaid, testGroupWords } from '#drawing/work/test-sheet-words.ts';
import { insulationLimit } from '#engine/proof/expected-limits.ts';
import type { TestPart, TestSheet } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { answerTest } from '../../../edits/test-readings.ts';
import { send } from '../../../job-events.ts';
import type { JobView } from '../../../job-view.ts';
import { newId } from '../../../new-id.ts';
import '../../fields/choice-field.ts';
import type { FieldChange } from '../../fields/field-element.ts';
import '../../fields/number-field.ts';
import { onEnter } from '../../fields/on-enter.ts';
import { controlsCss } from '../../shared-styles.ts';
import { asFoundTestsCss, asFoundTestsTemplate } from './as-found-tests.ts';
import './measured-proof.ts';
import './tested-with.ts';
import './test-row.ts';
import { conductorField } from '../../proof/conductor-field.ts';
import { workSheetHead } from './work-sheet-head.ts';
import { workSheetCss } from './work-sheet-styles.ts';

/** Test voltages of insulation, V: the usual one, and that with a surge device that cannot be parted (BS 7671 643.3.3, from memory). */
const testVolts = [insulationLimit().testV, 250] as const;

/**
 * The tests of the shown scheme in working order, each with room for what was read, judged as it is entered.
 *
 * @fires job-edit
 */
export class TestSheetElement extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    testV: { state: true },
  };
  static override styles = [
    controlsCss,
    workSheetCss,
    asFoundTestsCss,
    css`
      .conditions {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 14rem), 1fr));
        gap: 12px;
        max-width: 44rem;
        margin: 12px 0;
      }
      section {
        max-width: 44rem;
      }
      h3 {
        break-after: avoid;
      }
      .live {
        padding: 0 6px;
        border: 1.5px solid var(--ink);
        border-radius: var(--corner);
      }
      ol {
        margin: 4px 0 10px;
        padding-left: 20px;
      }
      .progress {
        position: sticky;
        z-index: 1;
        top: 0;
        display: flex;
        flex-wrap: wrap;
        gap: 4px 12px;
        align-items: center;
        justify-content: space-between;
        max-width: 44rem;
        padding: 6px 0;
        background: var(--sheet);
        border-bottom: 1px solid var(--line);
      }
      .progress button {
        min-height: 44px;
      }
    `,
  ];
  declare view: JobView;
  /** What insulation is tested with where a reading does not say it, V. */
  declare private testV: number;

  constructor() {
    super();
    this.testV = insulationLimit().testV;
    this.addEventListener('test-answered', (event) => this.#answer(event));
  }

  override render(): TemplateResult {
    const { scheme } = this.view;
    if (scheme === null) return html`<p class="hint">Wants a scheme: make one in <em>Ways</em>.</p>`;
    const sheet = testSheet(scheme);
    return html`${workSheetHead(this.view, 'Tests')}
      <p class="soft">${BAND_SAID}</p>
      ${
        sheet.parts.length === 0
          ? html`<p class="hint">This scheme touches no circuit: there is nothing to test.</p>`
          : html`${this.#conditions(sheet)}
              <div class="progress screen">
                <span role="status">${progressSaid(sheet)}</span>
                ${this.#next(sheet)}
              </div>
              ${asFoundTestsTemplate(scheme.worked)}
              <div @keydown=${(event: KeyboardEvent) => this.#typed(event)}>
                ${sheet.parts.map((part) => this.#part(part))}
              </div>
              <tested-with .job=${this.view.job}></tested-with>
              <measured-proof ?unread=${sheet.parts.every(({ tests }) => tests.every(({ reading }) => reading === null))} .scheme=${scheme} .sheet=${sheet} .limits=${this.view.library.limits}></measured-proof>`
      }`;
  }

  #conditions(sheet: TestSheet): TemplateResult {
    return html`<p class="soft paper-only">
        Conductors at ${sheet.conductorC} °C${sheet.isTold ? '' : ', since nobody said otherwise'}. Insulation is tested at ${this.testV} V.
      </p>
      <div class="conditions screen">
      ${conductorField(this, sheet, 'Empty: 20. Warmer copper reads more; an unloaded circuit is as warm as its walls.')}
      <choice-field
        label="Insulation is tested at"
        .value=${String(this.testV)}
        .options=${testVolts.map((volts) => ({ value: String(volts), label: `${volts} V` }))}
        .empty=${null}
        @field-change=${(event: CustomEvent<FieldChange<string | null>>) => {
          event.stopPropagation();
          this.testV = Number(event.detail.value);
        }}
      ></choice-field>
    </div>`;
  }

  #next({ parts }: TestSheet): TemplateResult | typeof nothing {
    const open = parts
      .flatMap(({ tests }) => tests)
      .find(({ verdict, isKept }) => verdict === 'not-read' && isKept);
    if (open === undefined) return nothing;
    return html`<button @click=${() => this.#focusOn(this.#rowOf(open.id))}>Next: ${open.mark}</button>`;
  }

  #part({ circuitId, circuitName, group, isLive, connect, tests }: TestPart): TemplateResult {
    return html`<section data-group=${group} data-circuit=${circuitId}>
      <h3>${testGroupWords[group].title} <span class=${isLive ? 'live' : 'soft'}>${isLive ? 'live' : 'dead'}</span></h3>
      <div class="soft">${circuitName}</div>
      <ol>
        ${connect.map((words) => html`<li>${words}</li>`)}
      </ol>
      ${limitsFrom(tests).map((words) => html`<p class="soft">${words}</p>`)}
      ${tests.map((test) => html`<test-row data-test=${test.id} .test=${test}></test-row>`)}
    </section>`;
  }

  #answer(event: HTMLElementEventMap['test-answered']): void {
    event.stopPropagation();
    const { test, value } = event.detail;
    const name = `${testGroupWords[test.group].title}: ${test.mark}`;
    const { date } = this.view;
    const edit = answerTest(test, { id: newId(), value, takenOn: date, testV: this.testV }, name);
    if (edit !== null) send(this, 'job-edit', edit);
  }

  get #rows(): readonly HTMLElementTagNameMap['test-row'][] {
    return [...this.renderRoot.querySelectorAll('test-row')];
  }

  #rowOf(testId: string): HTMLElement | undefined {
    return this.#rows.find((row) => row.test.id === testId);
  }

  /** Enter goes on to the next test, as a hand does that holds the probes in the other. */
  #typed(event: KeyboardEvent): void {
    const rows = this.#rows;
    const at = rows.findIndex((row) => event.composedPath().includes(row));
    void onEnter(event, () => this.#focusOn(rows.slice(at + 1).find(({ test }) => test.isKept)));
  }

  #focusOn(row: HTMLElement | undefined): void {
    const field = row?.shadowRoot?.querySelector<HTMLElement>('number-field, yes-no-field');
    row?.scrollIntoView({ block: 'center' });
    field?.focus({ preventScroll: true });
  }
}
customElements.define('test-sheet', TestSheetElement);
declare global {
  interface HTMLElementTagNameMap {
    'test-sheet': TestSheetElement;
  }
}

import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { Storey, Underlay } from '#model/building.ts';
import { keepFocus } from '../../controllers/keep-focus.ts';
import { changeUnderlay, hideUnderlay, removeUnderlay } from '../../edits/underlay.ts';
import { asWide, type Lying, levelled, shifted, toLength, turnedTo } from '../../house/underlay-place.ts';
import type { Vector } from '../../house/vector.ts';
import { type JobEdit, send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import { edits } from '../as-found/fact-fields.ts';
import { formCss } from '../as-found/form-styles.ts';
import '../fields/number-field.ts';
import '../fields/tick-field.ts';
import { pickCss, pickPicture } from '../photos/pick-picture.ts';
import { controlsCss } from '../shared-styles.ts';
import { houseFormCss } from './house-forms.ts';
import { lengthField } from './own-fields.ts';
import './picture-corners.ts';
import { SpotsTapping } from './spots-tapping.ts';
import './trace-room.ts';

/** What two places are tapped for. */
type Measure = 'scale' | 'level' | 'move';

const measureWords: Readonly<
  Record<Measure, { readonly button: string; readonly hints: readonly [string, string] }>
> = {
  scale: {
    button: 'To scale: tap two places',
    hints: ['Tap one end of a length that you know.', 'Tap its other end.'],
  },
  level: {
    button: 'Level it: tap a line',
    hints: ['Tap one end of a wall or a line that is straight in truth.', 'Tap its other end.'],
  },
  move: {
    button: 'Move it: tap from and to',
    hints: ['Tap a place of the picture.', 'Tap where that belongs on the plan.'],
  },
};

/**
 * The picture that lies under a storey's plan: chosen, straightened, brought to scale, turned, moved, faded, hidden, removed; and
 * rooms traced over it. All that is done by tapping can be typed.
 *
 * @fires underlay-chosen, underlay-previewed, job-edit, plan-asked
 */
export class UnderlayForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    storey: { attribute: false },
    measuring: { state: true },
    ends: { state: true },
    straightening: { state: true },
    why: { state: true },
  };
  static override styles = [
    controlsCss,
    formCss,
    houseFormCss,
    pickCss,
    css`
      label.slider {
        display: grid;
        gap: 4px;
      }
      input[type='range'] {
        width: 100%;
        min-height: 36px;
        accent-color: var(--copper);
      }
      @media (max-width: 700px) {
        input[type='range'] {
          min-height: 44px;
        }
      }
    `,
  ];
  declare view: JobView;
  declare storey: Storey;
  declare private measuring: Measure | null;
  /** Two places whose distance is asked for; null for none. */
  declare private ends: readonly [Vector, Vector] | null;
  declare private straightening: boolean;
  declare private why: string;
  readonly #tapping = new SpotsTapping(this);

  constructor() {
    super();
    keepFocus(this);
    this.measuring = null;
    this.ends = null;
    this.straightening = false;
    this.why = '';
  }

  override render(): TemplateResult {
    const { underlay } = this.storey;
    return underlay === undefined ? this.#none() : this.#one(underlay);
  }

  #none(): TemplateResult {
    return html`<p class="hint">
        A photo or a scan of a floor plan lies under the drawing, and rooms are traced over it. It is not printed.
      </p>
      <div class="buttons">${this.#pick('Photograph a plan', true)} ${this.#pick('Choose a picture', false)}</div>`;
  }

  #pick(label: string, camera: boolean): TemplateResult {
    return pickPicture({
      label,
      of: `to lie under ${this.storey.name}`,
      camera,
      took: ([file]) => {
        if (file !== undefined) send(this, 'underlay-chosen', { storeyId: this.storey.id, file });
      },
    });
  }

  #one(underlay: Underlay): TemplateResult {
    return html`<div class="buttons">
        <button @click=${() => {
          this.straightening = true;
        }}>Straighten it</button>
        ${(['scale', 'level', 'move'] as const).map((measure) => this.#measureButton(measure, underlay))}
      </div>
      ${this.why === '' ? nothing : html`<p class="why" role="alert">${this.why}</p>`}
      ${this.ends === null ? nothing : this.#askLength(underlay, this.ends)}
      ${this.#fade(underlay)}
      <tick-field
        label="Hide it"
        .value=${underlay.hidden === true}
        @field-change=${edits<boolean>((isHidden) => hideUnderlay(this.storey, isHidden))}
      ></tick-field>
      <details class="less">
        <summary>How it lies, in figures</summary>
        ${this.#figures(underlay)}
      </details>
      <h4>Trace a room</h4>
      <trace-room .view=${this.view} .storey=${this.storey}></trace-room>
      <div class="buttons">
        <button class="small" @click=${() => send(this, 'job-edit', removeUnderlay(this.storey))}>Remove the picture</button>
      </div>
      ${
        this.straightening
          ? html`<picture-corners
              .storey=${this.storey}
              .underlay=${underlay}
              @corners-closed=${() => {
                this.straightening = false;
              }}
            ></picture-corners>`
          : nothing
      }`;
  }

  #measureButton(measure: Measure, underlay: Underlay): TemplateResult {
    const isOn = this.measuring === measure && this.#tapping.isOn;
    return html`<button
      aria-pressed=${isOn}
      @click=${() => (isOn ? this.#tapping.letGo() : this.#measure(measure, underlay))}
    >
      ${isOn ? 'Tap the plan; press here to give up' : measureWords[measure].button}
    </button>`;
  }

  #measure(measure: Measure, underlay: Underlay): void {
    const [first, second] = measureWords[measure].hints;
    this.measuring = measure;
    this.ends = null;
    this.why = '';
    this.#tapping.begin({
      hint: (count) => (count === 0 ? first : second),
      closes: false,
      enough: 2,
      done: null,
      took: ([from, to]) => {
        if (from !== undefined && to !== undefined) this.#measured(measure, underlay, [from, to]);
      },
    });
  }

  #measured(measure: Measure, underlay: Underlay, [from, to]: readonly [Vector, Vector]): void {
    if (measure === 'scale') {
      this.ends = [from, to];
      void this.#toLengthField();
    } else if (measure === 'move') this.#lay('Move', shifted(underlay, from, to));
    else this.#lay('Level', levelled(underlay, from, to));
  }

  async #toLengthField(): Promise<void> {
    await this.updateComplete;
    const field = this.renderRoot.querySelector<HTMLElement>('.length number-field');
    field?.scrollIntoView({ block: 'center' });
    field?.focus();
  }

  #askLength(underlay: Underlay, [from, to]: readonly [Vector, Vector]): TemplateResult {
    return html`<div class="fields length">
      ${lengthField({
        label: 'How far apart they are in truth',
        help: '3.62, 3620 or 11\' 10"',
        value: null,
        took: (mm) => {
          if (mm === null) return;
          this.ends = null;
          this.#lay('Bring to scale', toLength(underlay, from, to, mm));
        },
      })}
    </div>`;
  }

  #lay(what: string, lying: Lying | null): void {
    this.why = lying === null ? 'The two places are one: tap them further apart.' : '';
    if (lying === null) return;
    const { at, scaleMmPerPx, angleDeg } = lying;
    this.#change(changeUnderlay(this.storey, what, { at, scaleMmPerPx, angleDeg }));
  }

  #change(edit: JobEdit): void {
    send(this, 'job-edit', edit);
  }

  #fade({ opacity }: Underlay): TemplateResult {
    const percentOf = (event: Event): number => Number((event.target as HTMLInputElement).value) / 100;
    return html`<label class="slider"
      >How much of it is seen
      <input
        type="range"
        min="5"
        max="100"
        step="5"
        aria-valuetext=${`${Math.round(opacity * 100)} %`}
        .value=${String(Math.round(opacity * 100))}
        @input=${(event: Event) => send(this, 'underlay-previewed', { opacity: percentOf(event) })}
        @change=${(event: Event) => {
          send(this, 'underlay-previewed', { opacity: null });
          this.#change(changeUnderlay(this.storey, 'Fade', { opacity: percentOf(event) }));
        }}
    /></label>`;
  }

  #figures(underlay: Underlay): TemplateResult {
    const { at, angleDeg, widthPx, scaleMmPerPx } = underlay;
    const place = (axis: 0 | 1, label: string): TemplateResult =>
      lengthField({
        label,
        value: Math.round(at[axis]),
        min: -50_000,
        needed: true,
        took: (mm) => {
          if (mm === null) return;
          const to: [number, number] = axis === 0 ? [mm, at[1]] : [at[0], mm];
          this.#lay('Move', shifted(underlay, at, to));
        },
      });
    return html`<div class="fields"><div class="pair">
        ${lengthField({
          label: 'The whole picture is wide',
          value: Math.round(widthPx * scaleMmPerPx),
          needed: true,
          took: (mm) => {
            if (mm !== null) this.#lay('Bring to scale', asWide(underlay, mm));
          },
        })}
        <number-field
          label="Turned anticlockwise"
          unit="°"
          .min=${-180}
          .max=${180}
          .needed=${true}
          .value=${Math.round(angleDeg * 100) / 100}
          @field-change=${(event: CustomEvent<{ readonly value: number | null }>) => {
            event.stopPropagation();
            const { value } = event.detail;
            if (value !== null) this.#lay('Turn', turnedTo(underlay, value));
          }}
        ></number-field>
        ${place(0, 'Its middle, across the plan')} ${place(1, 'Its middle, up the plan')}
      </div></div>`;
  }
}
customElements.define('underlay-form', UnderlayForm);
declare global {
  interface HTMLElementTagNameMap {
    'underlay-form': UnderlayForm;
  }
}

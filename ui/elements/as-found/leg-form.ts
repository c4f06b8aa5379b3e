import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { CHANNEL_SIZES } from '#engine/ways/channel-fill.ts';
import { isFoundInChannel } from '#engine/ways/found-channels.ts';
import type { Cable, End } from '#model/cable.ts';
import type { Leg } from '#model/installation.ts';
import { setLegCertainty, setLegFact } from '../../edits/legs.ts';
import { removeLegs } from '../../edits/remove-things.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import '../fields/tick-field.ts';
import { controlsCss } from '../shared-styles.ts';
import { cableChoices } from './cable-choices.ts';
import { endChoices, endValue } from './end-choices.ts';
import {
  choiceFact,
  edits,
  mustChoice,
  mustNumber,
  numberFact,
  textFact,
  type WordChoice,
} from './fact-fields.ts';
import { formCss } from './form-styles.ts';
import { removeButton } from './thing-row.ts';

const cableTypes: readonly WordChoice<Cable['type']>[] = [
  { value: 'flat-twin', label: 'Twin and earth' },
  { value: 'flat-single', label: 'Flat single' },
  { value: 'steel-wire-armoured', label: 'Steel-wire armoured' },
  { value: 'flex', label: 'Flex' },
  { value: 'imperial', label: 'Imperial, before metric sizes' },
];

const routeChoices = [
  { value: 'seen', label: 'Seen' },
  { value: 'measured', label: 'Measured' },
  { value: 'assumed', label: 'Assumed' },
  { value: 'unknown', label: 'Unknown' },
] as const;

type Channel = NonNullable<Leg['channel']>;

/** What is known of a cable between two ends. */
export class LegForm extends LitElement {
  static override properties: PropertyDeclarations = {
    view: { attribute: false },
    leg: { attribute: false },
    name: { type: String },
  };
  static override styles = [
    controlsCss,
    formCss,
    css`
      :host {
        display: block;
      }
    `,
  ];
  declare view: JobView;
  declare leg: Leg;
  /** Its two ends, in words. */
  declare name: string;

  constructor() {
    super();
    this.name = '';
  }

  override render(): TemplateResult {
    return html`<div class="fields">
        ${this.#circuitField()}
        <div class="pair">${this.#endField('from', 'From')}${this.#endField('to', 'To')}</div>
        ${this.#cableFields()} ${this.#lengthField()} ${this.#routeField()}
        ${this.#channelFields()}
        <div class="buttons">
          <button class="small" @click=${() => this.#joint()}>A joint is in it: tap where</button>
        </div>
      </div>
      ${removeButton(`the cable ${this.name}`, (from) => send(from, 'job-edit', removeLegs([this.leg.id], `the cable ${this.name}`)), 'what is joined into it')}`;
  }

  #joint(): void {
    const detail = { legId: this.leg.id };
    this.dispatchEvent(new CustomEvent('joint-wanted', { detail, bubbles: true, composed: true }));
  }

  #circuitField(): TemplateResult {
    const { leg, name, view } = this;
    return mustChoice(
      { thing: leg, set: (_: 'circuit', value: string) => setLegFact(leg.id, name, 'circuit', value) },
      'circuit',
      {
        label: 'Circuit',
        options: view.job.circuits.map((circuit) => ({ value: circuit.id, label: circuit.name })),
      },
    );
  }

  #endField(fact: 'from' | 'to', label: string): TemplateResult {
    const { leg, name, view } = this;
    const now = leg[fact];
    const choices = endChoices(view.job, leg.circuit, now);
    const endOf = (value: string): End => choices.find((choice) => choice.value === value)?.end ?? now;
    return mustChoice(
      {
        thing: { [fact]: endValue(now) },
        set: (_: string, value: string) => setLegFact(leg.id, name, fact, endOf(value)),
      },
      fact,
      { label, options: choices },
    );
  }

  #cableFields(): TemplateResult {
    const { leg, name } = this;
    const { options, value, cableOf } = cableChoices(leg.cable);
    const choice = choiceFact(
      {
        thing: { cable: value ?? undefined },
        set: (_: 'cable', chosen: string | null) => setLegFact(leg.id, name, 'cable', cableOf(chosen)),
        certainty: leg.certainty,
        sure: (_: 'cable', certainty) => setLegCertainty(leg.id, name, 'cable', certainty),
      },
      'cable',
      { label: 'Cable', options },
    );
    return html`${choice}${leg.cable === undefined ? nothing : this.#otherCable(leg.cable)}`;
  }

  /** For what is not among the usual cables. */
  #otherCable(cable: Cable): TemplateResult {
    const { leg, name } = this;
    const put = (next: Cable) => setLegFact(leg.id, name, 'cable', next);
    const areas = {
      thing: cable,
      set: (fact: 'lineMm2' | 'cpcMm2', value: number) => put({ ...cable, [fact]: value }),
    };
    return html`<details class="less">
      <summary>Another type or size</summary>
      <div class="fields">
        ${mustChoice(
          { thing: cable, set: (_: 'type', type: Cable['type']) => put({ ...cable, type }) },
          'type',
          {
            label: 'Type',
            options: cableTypes,
          },
        )}
        <div class="pair">
          ${mustNumber(areas, 'lineMm2', { label: 'Line and neutral', unit: 'mm²', min: 0.1, max: 1000 })}
          ${mustNumber(areas, 'cpcMm2', { label: 'Earth (0: none)', unit: 'mm²', max: 1000 })}
        </div>
        ${textFact(
          {
            thing: cable,
            set: (_: 'era', era: string | null) => {
              const { era: _gone, ...others } = cable;
              return put(era === null ? others : { ...others, era });
            },
          },
          'era',
          { label: 'Age, as printed or judged' },
        )}
      </div>
    </details>`;
  }

  #lengthField(): TemplateResult {
    const { leg, name } = this;
    return numberFact(
      {
        thing: leg,
        set: (_: 'lengthMm', value: number | null) => setLegFact(leg.id, name, 'lengthMm', value),
        certainty: leg.certainty?.length === undefined ? undefined : { lengthMm: leg.certainty.length },
        sure: (_: 'lengthMm', certainty) => setLegCertainty(leg.id, name, 'length', certainty),
      },
      'lengthMm',
      {
        label: 'Length of cable',
        help: 'Empty: taken from its way, or from the readings.',
        unit: 'm',
        scale: 1000,
        max: 1000,
      },
    );
  }

  #routeField(): TemplateResult {
    const { leg, name } = this;
    return mustChoice(
      {
        thing: { route: leg.certainty?.route ?? 'seen' },
        set: (_: 'route', certainty: (typeof routeChoices)[number]['value']) =>
          setLegCertainty(leg.id, name, 'route', certainty),
      },
      'route',
      { label: 'How sure its way through the house is', options: routeChoices },
    );
  }

  /** Of a cable that lies in plastic channel somewhere: its size, and whether new cable goes into it. */
  #channelFields(): TemplateResult | typeof nothing {
    const { leg, name, view } = this;
    const { channel } = leg;
    const path = view.estimate.asFound.worked.foundRuns.get(leg.id)?.segments ?? [];
    if (channel === undefined && !path.some(isFoundInChannel)) return nothing;
    const put = (next: Channel) =>
      setLegFact(leg.id, name, 'channel', Object.keys(next).length === 0 ? null : next);
    const { size: _size, ...unsized } = channel ?? {};
    const { reuse: _reuse, ...setOff } = channel ?? {};
    return html`<choice-field
        label="Size of its channel"
        .options=${channelSizes}
        .value=${channel?.size ?? null}
        @field-change=${edits<NonNullable<Channel['size']> | null>((size) => put(size === null ? unsized : { ...unsized, size }))}
      ></choice-field>
      <tick-field
        label="New cable goes into this channel"
        help="Where new channel would lie on it. Else the new one is set off beside it, and bought. Cables that lie together carry less: the checks say how much."
        .value=${channel?.reuse === true}
        @field-change=${edits<boolean>((reuse) => put(reuse ? { ...setOff, reuse } : setOff))}
      ></tick-field>`;
  }
}
const channelSizes = CHANNEL_SIZES.map((size) => ({ value: size, label: `${size.replace('x', ' × ')} mm` }));
customElements.define('leg-form', LegForm);
declare global {
  interface HTMLElementTagNameMap {
    'leg-form': LegForm;
  }
}

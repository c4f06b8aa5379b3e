import { html, type TemplateResult } from 'lit';
import '../fields/choice-field.ts';
import type { Choice } from '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';
import '../fields/text-field.ts';

/** Bare numbers below this are metres, as a laser shows them: nothing of a house that is measured here is so many millimetres. */
export const BARE_METRES_BELOW = 50;

/** What a field says stays with the form that has it, until something is drawn of it. */
const took =
  <V>(take: (value: V) => void) =>
  (event: CustomEvent<FieldChange<V>>): void => {
    event.stopPropagation();
    take(event.detail.value);
  };

interface LengthWords {
  readonly label: string;
  readonly help?: string;
  readonly value: number | null;
  /** The least that can be meant, mm; below nought a bare number is never metres. */
  readonly min?: number;
  readonly needed?: boolean;
  readonly disabled?: boolean;
  readonly took: (mm: number | null) => void;
}

/** A length of the house: millimetres, metres, feet and inches. */
export const lengthField = ({
  label,
  help = '',
  value,
  min = 1,
  needed = false,
  disabled = false,
  took: take,
}: LengthWords): TemplateResult =>
  html`<number-field
    .label=${label}
    .help=${help}
    unit="mm"
    .min=${min}
    .max=${50_000}
    .needed=${needed}
    .disabled=${disabled}
    .bareMetresBelow=${min < 0 ? null : BARE_METRES_BELOW}
    .value=${value}
    @field-change=${took<number | null>(take)}
  ></number-field>`;

interface ChoiceWords<V extends string> {
  readonly label: string;
  readonly help?: string;
  readonly options: readonly (Choice & { readonly value: V })[];
  readonly value: V | null;
  /** The words for none chosen; absent: one must be. */
  readonly empty?: string;
  readonly took: (value: V) => void;
}

/** One of several. */
export const choiceOf = <V extends string>({
  label,
  help = '',
  options,
  value,
  empty,
  took: take,
}: ChoiceWords<V>): TemplateResult =>
  html`<choice-field
    .label=${label}
    .help=${help}
    .options=${options}
    .empty=${empty ?? null}
    .value=${value}
    @field-change=${took<string | null>((chosen) => {
      const known = options.find((one) => one.value === chosen);
      if (known !== undefined) take(known.value);
    })}
  ></choice-field>`;

/** A name. */
export const nameField = (label: string, value: string, take: (text: string) => void): TemplateResult =>
  html`<text-field .label=${label} .value=${value} @field-change=${took<string>(take)}></text-field>`;

import { html, type TemplateResult } from 'lit';
import { setConductorC } from '../../edits/readings.ts';
import { send } from '../../job-events.ts';
import type { FieldChange } from '../fields/field-element.ts';
import '../fields/number-field.ts';

/** What the conductors are at in a test: the job's, for all circuits. */
export interface Conductors {
  readonly conductorC: number;
  /** Somebody said so; else it is the usual 20 °C. */
  readonly isTold: boolean;
}

/**
 * Asks for the temperature of the conductors.
 *
 * @param host sends the edit.
 */
export const conductorField = (
  host: HTMLElement,
  { conductorC, isTold }: Conductors,
  help: string,
): TemplateResult =>
  html`<number-field
    label="Conductors when tested"
    unit="°C"
    .help=${help}
    .min=${-40}
    .max=${120}
    .value=${isTold ? conductorC : null}
    @field-change=${(event: CustomEvent<FieldChange<number | null>>) => {
      event.stopPropagation();
      send(host, 'job-edit', setConductorC(event.detail.value));
    }}
  ></number-field>`;

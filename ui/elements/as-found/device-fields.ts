import { html, nothing, type TemplateResult } from 'lit';
import type { Circuit, Device } from '#model/installation.ts';
import { setDevice } from '../../edits/circuits.ts';
import { choiceFact, edits, mustChoice, mustNumber, numberFact } from './fact-fields.ts';
import { deviceCurves, deviceStandards, rcdTypes } from './found-words.ts';

/** The fields of a circuit's protective device; the rating comes first, the others once it is known. */
export function deviceFields(circuit: Circuit): TemplateResult {
  const { device } = circuit;
  if (device === undefined)
    return html`<number-field
      label="MCB or fuse rating"
      unit="A"
      .min=${1}
      .max=${10_000}
      .value=${null}
      @field-change=${edits<number | null>((ratingA) => (ratingA === null ? null : setDevice(circuit, { ratingA })))}
    ></number-field>`;
  const facts = {
    thing: device,
    set: <K extends keyof Device>(fact: K, value: Device[K] | null) => setDevice(circuit, { [fact]: value }),
  };
  return html`<div class="pair">
      ${mustNumber(facts, 'ratingA', { label: 'MCB or fuse rating', unit: 'A', min: 1, max: 10_000 })}
      ${choiceFact(facts, 'curve', { label: 'Curve', options: deviceCurves })}
    </div>
    ${mustChoice(facts, 'standard', { label: 'Protective device', options: deviceStandards })}
    ${numberFact(facts, 'breakingKA', { label: 'Breaking capacity', unit: 'kA', min: 0.1, max: 1000 })}
    ${numberFact(facts, 'letThroughA2s', {
      label: 'I²t that it lets through here',
      unit: 'A²s',
      min: 1,
      max: 1e9,
      help: 'By its maker’s data, at the fault current of the board. Decides whether protective conductors take a fault.',
    })}
    ${rcdOfDevice(circuit, device)}`;
}

function rcdOfDevice(circuit: Circuit, { rcd }: Device): TemplateResult {
  return html`<div class="pair">
    <choice-field
      label="RCD in the device"
      .empty=${'None'}
      .options=${rcdTypes}
      .value=${rcd?.type ?? null}
      @field-change=${edits<'AC' | 'A' | 'F' | 'B' | null>((type) =>
        setDevice(circuit, { rcd: type === null ? null : { type, mA: rcd?.mA ?? 30 } }),
      )}
    ></choice-field>
    ${
      rcd === undefined
        ? nothing
        : html`<number-field
            label="It trips at"
            unit="mA"
            .min=${1}
            .max=${10_000}
            .value=${rcd.mA}
            @field-change=${edits<number | null>((mA) => (mA === null ? null : setDevice(circuit, { rcd: { ...rcd, mA } })))}
          ></number-field>`
    }
  </div>`;
}

import { html, nothing, type TemplateResult } from 'lit';
import type { Circuit, Device } from '#model/installation.ts';
import type { Certainty } from '#model/primitives.ts';
import { markDevice, setCircuitCertainty, setDevice } from '../../edits/circuits.ts';
import { markable } from '../../edits/marked.ts';
import type { JobEdit } from '../../job-events.ts';
import '../fields/tick-field.ts';
import { choiceFact, edits, mustNumber, numberFact } from './fact-fields.ts';
import { deviceCurves, deviceStandards, rcdTypes } from './found-words.ts';

/** The fields of a circuit's protective device; the rating comes first, the others once it is known. */
export function deviceFields(circuit: Circuit): TemplateResult {
  const { device } = circuit;
  const marked = (edit: JobEdit) => markable(edit, (certainty) => markDevice(circuit, certainty));
  if (device === undefined)
    return html`<number-field
      data-fact="device"
      label="MCB or fuse rating"
      unit="A"
      .min=${1}
      .max=${10_000}
      .value=${null}
      @field-change=${edits<number | null>((ratingA) => (ratingA === null ? null : marked(setDevice(circuit, { ratingA }))))}
    ></number-field>`;
  const facts = {
    thing: device,
    set: <K extends keyof Device>(fact: K, value: NonNullable<Device[K]> | null) =>
      setDevice(circuit, { [fact]: value }),
    mark: (_: keyof Device, certainty: Certainty) => markDevice(circuit, certainty),
  };
  return html`${mustNumber(
    {
      ...facts,
      set: (_: 'ratingA', ratingA: number) => setDevice(circuit, { ratingA }),
      certainty: { ratingA: circuit.certainty?.device ?? 'seen' },
      sure: (_: 'ratingA', certainty) => setCircuitCertainty(circuit, 'device', certainty),
    },
    'ratingA',
    { label: 'MCB or fuse rating', unit: 'A', min: 1, max: 10_000 },
  )}
    <div class="pair">
      ${choiceFact(facts, 'standard', { label: 'Protective device', options: deviceStandards })}
      ${choiceFact(facts, 'curve', { label: 'Curve', options: deviceCurves })}
    </div>
    ${numberFact(facts, 'breakingKA', { label: 'Breaking capacity', unit: 'kA', min: 0.1, max: 1000 })}
    ${numberFact(facts, 'letThroughA2s', {
      label: 'I²t that it lets through here',
      unit: 'A²s',
      min: 1,
      max: 1e9,
      help: 'By its maker’s data, at the fault current of the board. Decides whether protective conductors take a fault.',
    })}
    ${rcdOfDevice(circuit, device, marked)}`;
}

/** An RCD that waits before it opens, or does not. */
export const withDelay = <T extends { delayed?: true | undefined }>(
  { delayed: _, ...rcd }: T,
  isDelayed: boolean,
): Omit<T, 'delayed'> & { delayed?: true } => (isDelayed ? { ...rcd, delayed: true } : rcd);

/** Breakers and fuses have no RCD in them; an RCBO has one, and what nobody named may have one. */
const rcdMayBeInIt = ({ standard }: Device): boolean => standard === undefined || standard === 'BS-EN-61009';

function rcdOfDevice(circuit: Circuit, device: Device, marked: (edit: JobEdit) => JobEdit): TemplateResult {
  const { rcd } = device;
  return html`<div class="pair">
    <choice-field
      label="RCD in the device"
      .empty=${rcdMayBeInIt(device) ? 'Not known' : 'None'}
      .options=${rcdTypes}
      .value=${rcd?.type ?? null}
      @field-change=${edits<'AC' | 'A' | 'F' | 'B' | null>((type) =>
        marked(setDevice(circuit, { rcd: type === null ? null : { mA: 30, ...rcd, type } })),
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
            @field-change=${edits<number | null>((mA) => (mA === null ? null : marked(setDevice(circuit, { rcd: { ...rcd, mA } }))))}
          ></number-field>`
    }
  </div>
  ${
    rcd === undefined
      ? nothing
      : html`<tick-field
        label="Delayed, type S"
        .value=${rcd.delayed === true}
        @field-change=${edits<boolean>((isDelayed) => marked(setDevice(circuit, { rcd: withDelay(rcd, isDelayed) })))}
      ></tick-field>`
  }`;
}

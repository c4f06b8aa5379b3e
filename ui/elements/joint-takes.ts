import { html, type TemplateResult } from 'lit';
import { jointCapacity } from '#engine/connections/joint-capacity.ts';
import type { Joint } from '#model/installation.ts';
import type { FieldChange } from './fields/field-element.ts';
import './fields/number-field.ts';

type Takes = NonNullable<Joint['takes']>;

/**
 * What a joint takes by its maker's sheet; left empty it goes by what is usual for its kind, which is shown as such.
 *
 * @param changed is told the whole joint with the new figures.
 */
export function jointTakes(
  joint: Joint,
  changed: (joint: Joint, from: EventTarget | null) => void,
): TemplateResult {
  const { takes: _, ...plain } = joint;
  const usual = jointCapacity(plain);
  const put = (key: keyof Takes) => (event: CustomEvent<FieldChange<number | null>>) => {
    event.stopPropagation();
    const { [key]: _gone, ...others } = joint.takes ?? {};
    const takes: Takes = event.detail.value === null ? others : { ...others, [key]: event.detail.value };
    changed(Object.keys(takes).length === 0 ? plain : { ...plain, takes }, event.currentTarget);
  };
  return html`<number-field
      label="Takes cables, by its sheet"
      .help=${`Empty: ${usual.cables ?? 'any number'}, as usual`}
      .min=${1}
      .max=${60}
      .whole=${true}
      .value=${joint.takes?.cables ?? null}
      @field-change=${put('cables')}
    ></number-field>
    <number-field
      label="Conductors up to"
      unit="mm²"
      .help=${`Empty: ${usual.conductorMm2} mm², as usual`}
      .min=${0.5}
      .max=${50}
      .value=${joint.takes?.mm2 ?? null}
      @field-change=${put('mm2')}
    ></number-field>`;
}

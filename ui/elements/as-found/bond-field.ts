import { html, nothing, type TemplateResult } from 'lit';
import { bondCertainty, bondFact, type Service } from '#engine/rules/bonds.ts';
import type { Supply } from '#model/installation.ts';
import { markableEntry } from '../../edits/marked.ts';
import { type BondFound, setBond, setBondCertainty } from '../../edits/supply.ts';
import '../fields/choice-field.ts';
import { certaintyEdits, edits } from './fact-fields.ts';
import { services } from './found-words.ts';

/** Sizes of bonding conductors that are met, mm². Source: BS 6004 (from memory). */
const bondSizes = [4, 6, 10, 16, 25].map((mm2) => ({ value: String(mm2), label: `${mm2} mm²` }));

/** What can be found of a bond. That nobody looked is another answer than that there is none. */
const bondChoices = [
  { value: 'seen', label: 'Bonded' },
  { value: 'missing', label: 'No bond found' },
  { value: 'no-service', label: 'No such service, or plastic' },
] as const;

type BondWord = (typeof bondChoices)[number]['value'];

/** What was found of a service's main bond, and below it its size where it is there. */
export function bondField(supply: Supply, service: Service): TemplateResult {
  const bond = supply.bonding.find((known) => known.service === service);
  const label = services.find(({ value }) => value === service)?.label.toLowerCase() ?? service;
  const name = service === 'other' ? 'another service' : label;
  const put = (found: BondFound | null) => {
    const edit = setBond(service, found);
    return markableEntry(edit, found, (certainty) => setBondCertainty(service, certainty));
  };
  const found = foundWord(supply, service);
  return html`<choice-field
      data-fact=${bondFact(service)}
      .label=${`Bond to ${name}`}
      .empty=${'Not looked at'}
      .options=${bondChoices}
      .value=${found}
      .certainty=${found === null ? null : bondCertainty(supply, service)}
      @field-change=${edits<BondWord | null>((word) =>
        put(word === null || word === 'no-service' ? word : { ...sizeOf(bond), seen: word === 'seen' }),
      )}
      @certainty-change=${certaintyEdits((certainty) => setBondCertainty(service, certainty))}
    ></choice-field>
    ${
      bond?.seen === true
        ? html`<choice-field
            .label=${`Size of the bond to ${name}`}
            .options=${sizesWith(bond.mm2)}
            .value=${bond.mm2 === undefined ? null : String(bond.mm2)}
            @field-change=${edits<string | null>((size) =>
              put({ ...(size === null ? {} : { mm2: Number(size) }), seen: true }),
            )}
          ></choice-field>`
        : nothing
    }`;
}

function foundWord({ bonding, absentServices }: Supply, service: Service): BondWord | null {
  const bond = bonding.find((known) => known.service === service);
  if (bond !== undefined) return bond.seen ? 'seen' : 'missing';
  return absentServices?.includes(service) === true ? 'no-service' : null;
}

const sizeOf = (bond: Supply['bonding'][number] | undefined): { mm2?: number } =>
  bond?.mm2 === undefined ? {} : { mm2: bond.mm2 };

/** The sizes to choose from, the one that is there among them. */
const sizesWith = (mm2: number | undefined) =>
  mm2 === undefined || bondSizes.some(({ value }) => value === String(mm2))
    ? bondSizes
    : [{ value: String(mm2), label: `${mm2} mm²` }, ...bondSizes];

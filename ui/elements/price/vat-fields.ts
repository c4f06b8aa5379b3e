import { html, nothing, type TemplateResult } from 'lit';
import type { PriceBuildUp } from '#engine/price/totals.ts';
import {
  claimWords,
  conditionsOf,
  type VatCondition,
  type VatConditionId,
  vatClaim,
} from '#engine/price/vat-claim.ts';
import type { Terms } from '#model/job.ts';
import { setVat, setVatCondition } from '../../edits/terms.ts';
import { send } from '../../job-events.ts';
import type { JobView } from '../../job-view.ts';
import type { Choice } from '../fields/choice-field.ts';
import '../fields/choice-field.ts';
import type { FieldChange } from '../fields/field-element.ts';
import { vatChoices } from './term-choices.ts';

function helpOf({ vat }: Terms, registered: boolean): string {
  if (!registered) return 'None is charged while the firm is not registered; then this counts again';
  if (vat === 'not-registered') return 'Though the firm is registered';
  if (vat === 'standard') return conditionsOf('standard')[0]?.words ?? '';
  return 'Only where its condition holds: say which';
}

const choiceOf = ({ condition, label, refused }: VatCondition): Choice => ({
  value: condition,
  label,
  ...(refused === null ? {} : { notPossible: 'does not serve' }),
});

/** Why the conditions that are offered and cannot be chosen do not serve. */
const refusals = (conditions: readonly VatCondition[]): string =>
  conditions.flatMap(({ label, refused }) => (refused === null ? [] : [`${label}: ${refused}`])).join(' ');

/** The rate of VAT and, where it is not the standard one, the condition that is claimed for it, in words. */
export function vatFields(from: EventTarget, { job, library }: JobView): TemplateResult {
  const { terms } = job;
  const registered = library.terms.vat !== 'not-registered';
  return html`<choice-field
      label="VAT"
      .help=${helpOf(terms, registered)}
      ?disabled=${!registered}
      .value=${registered ? terms.vat : 'not-registered'}
      .options=${vatChoices}
      .empty=${null}
      @field-change=${(event: CustomEvent<FieldChange<Terms['vat']>>) => {
        event.stopPropagation();
        send(from, 'job-edit', setVat(event.detail.value));
      }}
    ></choice-field>
    ${registered ? conditionField(from, terms) : nothing}`;
}

function conditionField(from: EventTarget, terms: Terms): TemplateResult | typeof nothing {
  if (terms.vat !== 'reduced' && terms.vat !== 'zero') return nothing;
  const offered = conditionsOf(terms.vat);
  const claim = vatClaim({ vat: terms.vat, vatCondition: terms.vatCondition ?? null });
  return html`<choice-field
    class="wide"
    label="Condition claimed for this rate"
    .help=${`${claimWords(claim)} ${refusals(offered.filter(({ condition }) => condition !== terms.vatCondition))}`.trim()}
    .value=${terms.vatCondition ?? null}
    .options=${offered.map(choiceOf)}
    .empty=${'None claimed'}
    @field-change=${(event: CustomEvent<FieldChange<VatConditionId | null>>) => {
      event.stopPropagation();
      send(from, 'job-edit', setVatCondition(event.detail.value));
    }}
  ></choice-field>`;
}

/** Under the line of the tax: the condition that a lower rate is charged by, or a warning that none holds. */
export function claimLine({
  vatClaim: claim,
}: Pick<PriceBuildUp, 'vatClaim'>): TemplateResult | typeof nothing {
  if (claim.verdict === 'not-needed') return nothing;
  if (claim.verdict === 'claimed') return html`<br />${claimWords(claim)}`;
  return html`<br /><span class="warning">${claimWords(claim)}</span>`;
}

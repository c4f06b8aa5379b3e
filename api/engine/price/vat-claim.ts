import { vatConditions } from '#data/standards/vat-conditions.ts';
import type { Terms } from '#model/job.ts';

/** A condition that a rate can be claimed by. */
export type VatConditionId = NonNullable<Terms['vatCondition']>;

/** A condition as people read it; `refused` says why it does not serve, null where it does. */
export interface VatCondition {
  readonly condition: VatConditionId | 'usual';
  readonly rate: 'standard' | 'reduced' | 'zero';
  readonly label: string;
  readonly words: string;
  readonly keep: string | null;
  readonly refused: string | null;
}

const rows: readonly VatCondition[] = vatConditions.rows;

/** The conditions that are read of for a rate, those that do not serve last; none where no tax is charged. */
export const conditionsOf = (vat: Terms['vat']): readonly VatCondition[] =>
  rows.filter(({ rate }) => rate === vat);

/**
 * Whether a rate stands on a condition. `not-needed`: the standard rate, or no tax at all; `claimed`: a condition of this rate is
 * named; `missing`: none is; `refused`: the one that is named does not serve; `other-rate`: it is of another rate.
 */
export interface VatClaim {
  readonly verdict: 'not-needed' | 'claimed' | 'missing' | 'refused' | 'other-rate';
  readonly condition: VatCondition | null;
}

/** How a job's rate of value added tax is claimed. */
export function vatClaim({
  vat,
  vatCondition,
}: {
  readonly vat: Terms['vat'];
  readonly vatCondition: VatConditionId | null;
}): VatClaim {
  const named = rows.find(({ condition }) => condition === vatCondition) ?? null;
  if (vat === 'not-registered') return { verdict: 'not-needed', condition: null };
  if (vat === 'standard') return { verdict: 'not-needed', condition: conditionsOf('standard')[0] ?? null };
  if (named === null) return { verdict: 'missing', condition: null };
  if (named.refused !== null) return { verdict: 'refused', condition: named };
  return { verdict: named.rate === vat ? 'claimed' : 'other-rate', condition: named };
}

/** A claim in a sentence, for the screen and for papers. */
export function claimWords({ verdict, condition }: VatClaim): string {
  switch (verdict) {
    case 'not-needed':
      return condition?.words ?? 'None is charged.';
    case 'missing':
      return 'No condition is claimed for this rate: name it, or charge 20 %.';
    case 'refused':
      return condition?.refused ?? '';
    case 'other-rate':
      return `“${condition?.label}” is no condition of this rate: name one that is, or charge 20 %.`;
    case 'claimed':
      return `${condition?.words}${condition?.keep === null ? '' : ` Keep ${condition?.keep}.`}`;
  }
}

import { describe, expect, it } from 'vitest';
import { estimateOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { boilerSpur } from '#tests/engine/proof/boiler-spur.ts';
import {
  flexOutletSaid,
  flexOutletUnsaid,
  withFlexOutlet,
} from '../../../ui/elements/as-found/flex-outlet.ts';

const newUnit = (flexOutlet?: boolean) => {
  const unit = { switched: true, ...(flexOutlet === undefined ? {} : { flexOutlet }) };
  const { fusedUnits } = schemeOf(estimateOf(boilerSpur({ unit })), 's');
  return fusedUnits.find(({ id }) => id === 'boiler');
};

describe('the flex outlet of a fused unit', () => {
  it('is said to be chosen for a new unit while nobody has said, as the kit buys it', () => {
    expect(newUnit()?.flexOutlet).toBe(true);
    expect(flexOutletSaid({ switched: true })).toBeNull();
    expect(flexOutletUnsaid({ status: 'wanted' })).toBe('Automatic: one where no cable leaves it');
    expect(flexOutletUnsaid({ status: 'existing' })).toBe('Not known');
  });

  it('can be declined, which the kit follows, and taken back', () => {
    const declined = withFlexOutlet({ switched: true }, 'no');
    expect(flexOutletSaid(declined)).toBe('no');
    expect(newUnit(declined.flexOutlet)?.flexOutlet).toBe(false);
    expect(flexOutletSaid(withFlexOutlet({ switched: true }, 'yes'))).toBe('yes');
    expect(withFlexOutlet(declined, null)).toEqual({ switched: true });
  });
});

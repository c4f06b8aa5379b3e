import { describe, expect, it } from 'vitest';
import { vehicleCharging } from '#engine/rules/vehicle-charging.ts';
import type { Point } from '#model/installation.ts';
import { factsOf, pointOf, saidBy } from './facts-builder.ts';

const said = (partial: Partial<Point>) =>
  saidBy(vehicleCharging, factsOf({ job: { points: [pointOf('p', { status: 'wanted', ...partial })] } }));
const loadOf = (use: string) => ({ load: { watts: 2300, use, fixed: true } });

describe('vehicle charging', () => {
  it.each(['EV', 'electric vehicle', 'car charger', 'charge point', 'Chargepoint'])(
    '[SC1] is out of scope: %s',
    (use) => {
      expect(said(loadOf(use))).toMatchObject([{ outcome: 'decide', messageId: 'outOfScope', actual: use }]);
    },
  );

  it('[SC1] is read from the label too', () => {
    expect(said({ label: 'EV socket' })).toHaveLength(1);
  });

  it('[SC1] is not found in other words or in what is there already', () => {
    expect(said(loadOf('television, every evening'))).toEqual([]);
    expect(said({ ...loadOf('EV'), status: 'existing' })).toEqual([]);
    expect(said({})).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { bathroomRcd } from '#engine/rules/bathroom-rcd.ts';
import type { Job } from '#model/job.ts';
import type { Scheme } from '#model/scheme.ts';
import { demoJob, estimateOf, findingsOf, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { saidBy } from './facts-builder.ts';
import { fixtureOf, houseOf, wantedOn } from './house-builder.ts';

const points = [wantedOn(4000, 450)];

describe('circuits of bathrooms', () => {
  it('[PO8] advises on what no circuit reaches yet, wherever a bath or shower is in the room, drawn or only named', () => {
    const drawn = houseOf({ points, fixtures: [fixtureOf('bath', [0, 0], [700, 700])] });
    expect(saidBy(bathroomRcd, drawn)).toMatchObject([{ outcome: 'advice', limit: 30, unit: 'mA' }]);
    expect(saidBy(bathroomRcd, houseOf({ points, room: { use: 'bathroom' } }))).toHaveLength(1);
  });

  it('[PO8] is silent in other rooms', () => {
    expect(saidBy(bathroomRcd, houseOf({ points }))).toEqual([]);
  });
});

describe('a fused unit joined in the bathroom of the demo house', () => {
  const base = demoJob('saltglass-row');
  const bathroom = base.storeys[1]?.rooms.find(({ use }) => use === 'bathroom');
  const side = bathroom?.walls[0];
  const unit = {
    ...base.points[0],
    id: 'unit-bath1',
    label: 'U1',
    status: 'wanted' as const,
    kind: 'fused-unit' as const,
  };
  const withUnit = (remedies: Scheme['remedies']): Job => ({
    ...base,
    points: [
      ...base.points,
      {
        ...unit,
        photos: [],
        features: [],
        place: { wall: side?.wall ?? '', side: side?.side ?? 'left', alongMm: 1000, heightMm: 1200 },
      },
    ],
    schemes: [
      {
        id: 'bath-unit1',
        name: 'Bath',
        connections: [
          {
            id: 'conn-bath1',
            kind: 'fused-spur',
            from: { point: idOf('R8') },
            unit: 'unit-bath1',
            feeds: [],
          },
        ],
        remedies,
        locks: [],
      },
    ],
  });
  const idOf = (label: string): string => base.points.find((point) => point.label === label)?.id ?? label;
  const outcomes = (remedies: Scheme['remedies']) =>
    findingsOf(schemeOf(estimateOf(withUnit(remedies)), 'bath-unit1'), 'PO8').map(({ outcome, subject }) => [
      outcome,
      subject,
    ]);

  it('[PO8] fails without an RCD and passes with the RCBO that the scheme fits', () => {
    expect(outcomes([])).toEqual([['fails', 'unit-bath1']]);
    expect(outcomes([{ kind: 'rcbo', at: base.circuits[0]?.id ?? '' }])).toEqual([['passes', 'unit-bath1']]);
  });
});

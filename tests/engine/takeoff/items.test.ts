import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NewAccessory } from '#engine/connections/things.ts';
import { boardEnclosure } from '#engine/rules/board-enclosure.ts';
import { accessoryDemands, accessoryItem } from '#engine/takeoff/accessory-lines.ts';
import { itemOf, knownItems } from '#engine/takeoff/items.ts';
import { usualSold } from '#engine/takeoff/kit-counts.ts';
import { newEdge, pointOf, wanted } from '#tests/engine/connections/wiring-builder.ts';
import { linesByItem, measuredByItem, workedOf } from './worked-builder.ts';

const known = new Set(knownItems.map(({ id }) => id));

describe('the list of items', () => {
  it('has each id once, sorted', () => {
    const ids = knownItems.map(({ id }) => id);
    expect(known.size).toBe(ids.length);
    expect(ids).toEqual(ids.toSorted());
  });

  it('has a description of its own for every item', () => {
    expect(new Set(knownItems.map(({ description }) => description)).size).toBe(knownItems.length);
  });

  // BS 7671 421.1.201: consumer units and the like are of a material that does not burn, or in such a case; steel is one.
  it('says steel of every enclosure of devices, as PR3 asks when one is fitted', () => {
    const enclosures = knownItems.filter(({ id }) => /^(consumer-unit|enclosure)-/.test(id));
    expect(enclosures.length).toBe(1 + usualSold.boardWays.length);
    for (const { description } of enclosures) expect(description).toMatch(/, steel,/);
    expect(boardEnclosure.remedies?.newBoard).toContain('steel');
  });

  it('keeps unit and group of a listed item, whatever is asked', () => {
    expect(itemOf('oval-20', 'each', 'boxes')).toMatchObject({ unit: 'm', group: 'containment' });
  });

  it('has every plain accessory that a scheme can fit', () => {
    const accessory = (kind: string, features: readonly string[] = []): NewAccessory => ({
      id: 'w',
      pointId: 'w',
      kind,
      features,
    });
    const fitted = [
      ...[
        'socket-single',
        'socket-twin',
        'flex-outlet',
        'dp-switch',
        'cooker-control',
        'shaver',
        'blank',
      ].map((kind) => accessory(kind)),
      ...['usb', 'rcd', 'ip66', 'metal'].map((feature) => accessory('socket-twin', [feature])),
      ...[[], ['neon'], ['flex'], ['flex', 'neon'], ['metal']].flatMap((features) => [
        accessory('fused-unit', features),
        accessory('fused-unit', ['switched', ...features]),
      ]),
      accessory('fused-unit', ['rcd', 'switched']),
      accessory('blank', ['twin']),
    ];
    expect(fitted.map(accessoryItem).filter((id) => !known.has(id))).toEqual([]);
  });

  it('leaves an accessory that nobody has named to be seen as not priced', () => {
    expect(known.has(accessoryItem({ id: 'w', pointId: 'w', kind: 'other', features: [] }))).toBe(false);
  });
});

describe('accessories', () => {
  it('of a grid are its plate and its modules', () => {
    const modules = [{ kind: 'switch' }, { kind: 'fuse', fuseA: 13 }, { kind: 'switch' }];
    const worked = workedOf({
      points: [pointOf('a'), wanted('w', { kind: 'grid', modules })],
      newEdges: [newEdge('n', 'a', 'w')],
    });
    expect(measuredByItem(accessoryDemands(worked))).toEqual({
      'grid-module-fuse': 1,
      'grid-module-switch': 2,
      'grid-plate-twin': 1,
    });
  });

  it('of sockets in any number are that number of sockets, boxes and nothing unlisted', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), (count) => {
        const ids = Array.from({ length: count }, (_, index) => `w${index}`);
        const worked = workedOf({
          points: [pointOf('a'), ...ids.map((id) => wanted(id))],
          newEdges: ids.map((id) => newEdge(`n-${id}`, 'a', id)),
        });
        const lines = linesByItem(worked);
        expect(lines.get('socket-twin')?.quantity).toBe(count);
        expect([...lines.keys()].filter((item) => !known.has(item))).toEqual([]);
      }),
      { seed: 2 },
    );
  });
});

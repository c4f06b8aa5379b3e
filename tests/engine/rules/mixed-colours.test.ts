import { describe, expect, it } from 'vitest';
import { mixedColours } from '#engine/rules/mixed-colours.ts';
import type { Circuit } from '#model/installation.ts';
import { circuitOf, factsOf, saidBy, schemeOf, shapeOf } from './facts-builder.ts';

const said = (partial: Partial<Circuit>, scheme = true) =>
  saidBy(
    mixedColours,
    factsOf({
      job: { circuits: [circuitOf('c', partial)] },
      shapes: [shapeOf('c')],
      ...(scheme ? { scheme: schemeOf() } : {}),
    }),
  );

describe('old and new colours', () => {
  it('[SC4] get an optional notice where they meet', () => {
    expect(said({ colours: 'old' })).toMatchObject([{ outcome: 'advice', messageId: 'mixed' }]);
    expect(said({ colours: 'mixed' })).toMatchObject([{ messageId: 'mixed' }]);
  });

  it('[SC4] are asked about where nobody looked', () => {
    expect(said({})).toMatchObject([{ outcome: 'advice', messageId: 'unknown' }]);
  });

  it('[SC4] do not meet in new cable or without new work', () => {
    expect(said({ colours: 'new' })).toEqual([]);
    expect(said({ colours: 'old' }, false)).toEqual([]);
  });
});

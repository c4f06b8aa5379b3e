import { describe, expect, it } from 'vitest';
import type { BackBox } from '#engine/connections/things.ts';
import { boxInPartyWall } from '#engine/rules/box-in-party-wall.ts';
import { boxOf, factsOf, jobOf, saidBy } from './facts-builder.ts';

const said = (partial: Partial<BackBox>, nation: 'england' | 'scotland' = 'england') =>
  saidBy(
    boxInPartyWall,
    factsOf({
      job: { site: { ...jobOf().site, nation } },
      things: { boxes: [boxOf('p', { party: true, ...partial })] },
    }),
  );

describe('boxes in party walls', () => {
  it('[BX3] leaves new and exchanged flush boxes to be decided', () => {
    expect(said({ action: 'fit' })).toMatchObject([
      { outcome: 'decide', messageId: 'flush', origin: 'scheme' },
    ]);
    expect(said({ action: 're-box' })).toMatchObject([{ outcome: 'decide' }]);
  });

  it('[BX3] names the warrant in Scotland', () => {
    expect(said({}, 'scotland')).toMatchObject([{ messageId: 'flushScotland' }]);
  });

  it('[BX3] passes surface boxes and is silent on what stays and on other walls', () => {
    expect(said({ build: 'surface' })).toMatchObject([{ outcome: 'passes' }]);
    expect(said({ action: 'keep' })).toEqual([]);
    expect(said({ party: false })).toEqual([]);
  });
});

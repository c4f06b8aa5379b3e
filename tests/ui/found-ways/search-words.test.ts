import { describe, expect, it } from 'vitest';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import {
  calmestWords,
  cheaperOwnWords,
  cheapestWords,
  disturbedWords,
  orderWords,
  provedWords,
} from '../../../ui/found-ways/search-words.ts';
import { foundOf } from '../../../ui/found-ways/searcher.ts';
import { pounds } from '../../../ui/written.ts';
import { foundAmong } from './made-searcher.ts';

const found = (changed = {}) => foundOf(foundAmong(demoEstimate('saltglass-row'), changed));

describe('the words for what was proved', () => {
  it('promise the least works cost only where it was proved', () => {
    expect(provedWords(found())).toMatch(
      /^Of all ways that are searched and fail no check, the cheapest to do costs £500\.00 .*proved\. 12 schemes were looked at\.$/,
    );
    const open = provedWords(found({ optimal: false, boundPence: 48_000, gap: 0.0417, examined: 1 }));
    expect(open).toMatch(/^Not proved to be the cheapest/);
    expect(open).toMatch(/no less than £480\.00, up to 4\.2 % above that .*1 scheme was looked at\.$/);
  });

  it('do not call it £0.00 where nothing but what every way takes is asked for', () => {
    const schemes = foundAmong(demoEstimate('saltglass-row')).schemes.map((one) => ({
      ...one,
      worksPence: 0,
    }));
    const words = provedWords(found({ schemes }));
    expect(words).toMatch(
      /^Of all ways that are searched and fail no check, none is cheaper to do: .*proved\. 12 schemes were looked at\.$/,
    );
    expect(words).not.toContain('£0.00');
  });

  it('say that nothing was found', () => {
    expect(provedWords(found({ schemes: [] }))).toMatch(
      /^Every way that is searched fails some check, and none is left to try/,
    );
    expect(provedWords(found({ schemes: [], optimal: false }))).toMatch(
      /^Every way tried so far fails some check/,
    );
  });

  it('say where the least works cost is not the lowest price', () => {
    expect(orderWords(found())).toBeNull();
    const [first, second, ...rest] = foundAmong(demoEstimate('saltglass-row')).schemes;
    if (first === undefined || second === undefined) throw new Error('two are wanted');
    const turned = [first, { ...second, worksPence: first.worksPence - 1 }, ...rest];
    expect(orderWords(found({ schemes: turned }))).toMatch(/^Way 2 costs the least to do/);
  });

  it('promise the least disturbance only where it was proved, and nothing where it was not looked for', () => {
    const disturbance = { optimal: true, boundPoints: 65.55, gap: 0, examined: 51, schemeId: 'found/1' };
    const { candidates } = found();
    const calmest = candidates.find((one) => one.calmest)?.scheme.id ?? '';
    const other = candidates.find((one) => !one.calmest)?.scheme.id ?? '';
    expect(disturbedWords(found({ disturbance: { ...disturbance, schemeId: calmest } }))).toBe(
      'Counted cable by cable, that is proved for all ways that are searched and fail no check: 51 schemes were looked at for that.',
    );
    expect(disturbedWords(found({ disturbance: { ...disturbance, schemeId: other } }))).toMatch(
      /way \d is proved to disturb least of all that are searched and fail no check; rooms and openings that cables share make the difference\./,
    );
    expect(disturbedWords(found({ disturbance: { ...disturbance, optimal: false } }))).toMatch(
      /^It is not proved that nothing disturbs less/,
    );
    expect(disturbedWords(found())).toBeNull();
  });

  it('say which way disturbs least, and for how much more money', () => {
    const [first, second] = foundAmong(demoEstimate('saltglass-row')).schemes;
    if (first === undefined || second === undefined) throw new Error('two are wanted');
    const withMess = (one: typeof first, messPoints: number) => ({
      ...one,
      estimate: { ...one.estimate, messPoints },
    });
    expect(calmestWords(found({ schemes: [withMess(first, 116), withMess(second, 114)] }))).toMatch(
      /^Way 2 is the least disturbing of all that was found: 114 points of disturbance against 116 points for the cheapest, for £[\d,]+\.\d\d more\.$/,
    );
    expect(calmestWords(found({ schemes: [withMess(first, 90), withMess(second, 114)] }))).toBe(
      'It is the least disturbing of all that was found, too.',
    );
    expect(calmestWords(found({ schemes: [first] }))).toBeNull();
    expect(cheapestWords(found({ schemes: [first] }))).toBe(
      `Way 1 is the cheapest: ${pounds(first.estimate.totals.grossPence)}.`,
    );
    expect(cheapestWords(found({ schemes: [] }))).toBeNull();
  });

  it('tell of a scheme in the job that is cheaper than all found, unless it fails', () => {
    const { schemes } = demoEstimate('saltglass-row');
    const dearer = found({ schemes: foundAmong(demoEstimate('saltglass-row')).schemes.slice(-1) });
    expect(cheaperOwnWords(dearer, schemes)).toMatch(
      /“Spurs from the nearest points.*” which is|“Spurs from the nearest points/,
    );
    expect(
      cheaperOwnWords(
        dearer,
        schemes.filter(({ complies }) => complies === 'no'),
      ),
    ).toBeNull();
  });
});

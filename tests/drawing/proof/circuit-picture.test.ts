import { describe, expect, it } from 'vitest';
import { circuitPicture } from '#drawing/proof/circuit-picture.ts';
import { dropCurve } from '#drawing/proof/drop-curve.ts';
import { pictureTree } from '#drawing/proof/picture-tree.ts';
import { demoEstimate } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { demoPicture, demoPictures } from './demo-pictures.ts';

describe('a circuit made ready to be drawn', () => {
  it('has the engine’s volt drop at every point', () => {
    for (const { name, proof, picture } of demoPictures()) {
      if (picture.scenario !== 'handbook') continue;
      const drops = new Map(picture.nodes.map(({ subject, dropV }) => [subject, dropV]));
      for (const { point, dropV } of proof.points) {
        const drawn = drops.get(point.replace(/\/load$/, '')) ?? null;
        if (dropV === null) expect(drawn, `${name} ${point}`).toBeNull();
        else expect(drawn, `${name} ${point}`).toBeCloseTo(dropV, 9);
      }
    }
  });

  it('has the engine’s worst volt drop under every other load', () => {
    let compared = 0;
    for (const { name, proof, picture } of demoPictures()) {
      const told = proof.otherScenarios.find(({ scenario }) => scenario === picture.scenario);
      if (told === undefined || told.worstDropV === null || Number.isNaN(told.worstDropV)) continue;
      const worst = Math.max(...picture.nodes.map(({ dropV }) => dropV ?? 0));
      expect(worst, name).toBeCloseTo(told.worstDropV, 9);
      compared++;
    }
    expect(compared).toBeGreaterThan(20);
  });

  it('has every cable once and each point once, a unit with its fuse as one', () => {
    const { proof, picture } = demoPicture('fernlow-close fused-unit ring-downs handbook');
    expect(picture.legs.map(({ id }) => id)).toEqual(
      proof.legs.map(({ leg }) => leg).filter((leg) => !leg.endsWith('/fuse')),
    );
    const subjects = picture.nodes.map(({ subject }) => subject);
    expect(new Set(subjects).size).toBe(subjects.length);
    expect(picture.nodes.find(({ subject }) => subject === 'c1-fused-b/unit')).toMatchObject({
      kind: 'unit',
      fuseA: 13,
      isNew: true,
    });
  });

  it('marks one leg as the worst: the one with the greatest share', () => {
    for (const { name, picture } of demoPictures()) {
      const worst = picture.legs.filter(({ isWorst }) => isWorst);
      const flows = picture.legs.some(({ currentA }) => (currentA ?? 0) > 0);
      expect(worst.length, name).toBe(flows ? 1 : 0);
      const most = Math.max(...picture.legs.map(({ share }) => share ?? 0));
      if (flows && most > 0) expect(worst[0]?.share, name).toBe(most);
    }
  });

  it('opens the leg that the scenario opens, and lets nothing flow in it', () => {
    const { picture, proof } = demoPicture('saltglass-row spurs-rcbo ring-house open-at-worst-leg');
    const open = picture.legs.filter(({ isOpen }) => isOpen);
    expect(open.map(({ id }) => id)).toEqual([
      proof.otherScenarios.find(({ scenario }) => scenario === 'open-at-worst-leg')?.openLeg,
    ]);
    expect(open[0]?.currentA).toBe(0);
  });

  it('is none where no cable of the circuit is recorded', () => {
    const { asFound } = demoEstimate('saltglass-row-quoting');
    const [proof] = asFound.proof;
    if (proof === undefined) throw new Error('no proof');
    expect(circuitPicture(asFound.worked, proof)).toBeNull();
  });
});

describe('the tree of a picture', () => {
  it('comes to every node once, or says that nothing reaches it', () => {
    for (const { name, picture } of demoPictures()) {
      const { branches, unreached } = pictureTree(picture);
      const hung = [...branches.values()].flat().map(({ to }) => to);
      const all = [0, ...(picture.ring?.nodes ?? []), ...hung, ...unreached].toSorted((a, b) => a - b);
      expect(all, name).toEqual(picture.nodes.map((_, i) => i));
    }
  });
});

describe('the curve of the volt drop', () => {
  it('begins and ends at the board with no drop, and is as long as the ring', () => {
    const { picture, proof } = demoPicture('quarrel-court spurs-rcbo ring-flat5 handbook');
    const { legs, lengthMm } = dropCurve(picture);
    const ring = legs.filter(({ isSpur }) => !isSpur);
    expect(ring[0]?.from).toEqual([0, 0]);
    expect(ring.at(-1)?.to).toEqual([proof.ring?.lengthMm, 0]);
    expect(lengthMm).toBe(proof.ring?.lengthMm);
  });
});

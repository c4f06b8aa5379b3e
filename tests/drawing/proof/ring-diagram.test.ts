import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { widthOf } from '#drawing/proof/cable-band.ts';
import type { CircuitPicture } from '#drawing/proof/circuit-picture.ts';
import { circuitDiagram } from '#drawing/proof/ring-diagram.ts';
import { svgOf } from '#drawing/svg.ts';
import { demoPicture, demoPictures } from './demo-pictures.ts';
import { groupsOf, outside, overlaps, textsOf } from './scene-parts.ts';

const drawn = (picture: CircuitPicture, widthMm: number) =>
  circuitDiagram(picture, { widthMm, unitsPerM: 1.4, rating: '32 A' });

/** A phone’s and a desk’s width, units of 5 px. */
const widths = [70, 130] as const;

describe('the picture of a circuit as it is wired', () => {
  it('shows each point once and each cable once', () => {
    for (const { name, picture } of demoPictures())
      for (const widthMm of widths) {
        const scene = drawn(picture, widthMm);
        const points = [...groupsOf(scene, 'points'), ...groupsOf(scene, 'notes')].map(
          ({ subject }) => subject,
        );
        expect(points.toSorted(), name).toEqual(picture.nodes.map(({ subject }) => subject).toSorted());
        const reached = picture.legs.filter(({ ends }) => picture.nodes[ends[0]]?.dropV !== null);
        const cables = groupsOf(scene, 'cables').map(({ subject }) => subject);
        expect(cables.toSorted(), name).toEqual(reached.map(({ subject }) => subject).toSorted());
      }
  });

  it('lets no lettering run into another or off the sheet', () => {
    for (const { name, picture } of demoPictures())
      for (const widthMm of widths) {
        const scene = drawn(picture, widthMm);
        expect(overlaps(scene), `${name} ${widthMm}`).toEqual([]);
        expect(outside(scene), `${name} ${widthMm}`).toEqual([]);
      }
  });

  it('fits a phone, lettering no smaller than can be read', () => {
    for (const { name, picture } of demoPictures()) {
      const scene = drawn(picture, 73);
      expect(scene.widthMm, name).toBeLessThanOrEqual(78);
      expect(Math.min(...textsOf(scene).map(({ sizeMm }) => sizeMm))).toBeGreaterThanOrEqual(2.5);
    }
  });

  it('draws cables the wider the more they carry', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 63, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        (a, more) => {
          expect(widthOf(a + more)).toBeGreaterThan(widthOf(a));
        },
      ),
    );
    const { picture } = demoPicture('saltglass-row found ring-house handbook');
    const scene = drawn(picture, 130);
    const across = groupsOf(scene, 'cables').map(({ subject, shapes }) => {
      const band = shapes.find((shape) => shape.kind === 'line');
      const [first, last] = band?.kind === 'line' ? [band.points[0], band.points.at(-1)] : [];
      const width = first && last ? Math.hypot(first[0] - last[0], first[1] - last[1]) : 0;
      return { width, currentA: picture.legs.find((leg) => leg.subject === subject)?.currentA ?? 0 };
    });
    const byCurrent = across.toSorted((a, b) => a.currentA - b.currentA).map(({ width }) => width);
    expect(byCurrent).toEqual(byCurrent.toSorted((a, b) => a - b));
    expect(byCurrent[0]).toBeLessThan((byCurrent.at(-1) ?? 0) - 0.5);
  });

  it('has the ring’s points in their order, up from end A and down to end B', () => {
    const { picture } = demoPicture('saltglass-row spurs-rcbo ring-house handbook');
    const scene = drawn(picture, 130);
    const places = (picture.ring?.nodes ?? []).map((node) => {
      const group = groupsOf(scene, 'points').find(({ subject }) => subject === picture.nodes[node]?.subject);
      const circle = group?.shapes.find((shape) => shape.kind === 'circle');
      return circle?.kind === 'circle' ? circle.at : ([0, 0] as const);
    });
    const left = places.filter(([x]) => x < 65);
    const right = places.filter(([x]) => x > 65);
    expect(places).toEqual([...left, ...right]);
    expect(left.map(([, y]) => y)).toEqual(left.map(([, y]) => y).toSorted((a, b) => b - a));
    expect(right.map(([, y]) => y)).toEqual(right.map(([, y]) => y).toSorted((a, b) => a - b));
  });

  it('tells the worst leg by a word and a shape, and new cable by another fill and a word', () => {
    const { picture } = demoPicture('saltglass-row spurs-rcbo ring-house handbook');
    const scene = drawn(picture, 130);
    const worst = groupsOf(scene, 'cables').filter(({ title }) => title.includes('most loaded'));
    expect(worst.map(({ subject }) => subject)).toEqual([
      picture.legs.find(({ isWorst }) => isWorst)?.subject,
    ]);
    expect(worst[0]?.shapes.some((shape) => shape.kind === 'line' && shape.points.length === 3)).toBe(true);
    for (const leg of picture.legs) {
      const group = groupsOf(scene, 'cables').find(
        ({ title, subject }) => subject === leg.subject && title !== '',
      );
      const inks = group?.shapes.flatMap((shape) => (shape.kind === 'line' ? [shape.ink] : [])) ?? [];
      expect(inks.includes('symbol-new')).toBe(leg.isNew);
      const texts = group?.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])) ?? [];
      expect(texts.some((text) => text.startsWith('new'))).toBe(leg.isNew);
    }
  });

  it('says in words what carries more than it may, and what is open', () => {
    const { picture } = demoPicture('quarrel-court spurs-rcbo ring-flat5 open-at-worst-leg');
    const texts = textsOf(drawn(picture, 130)).map(({ text }) => text);
    const over = picture.legs.filter(({ share }) => (share ?? 0) > 1).length;
    expect(over).toBeGreaterThan(0);
    expect(texts.filter((text) => text === 'over its Iz').length).toBe(over);
    expect(texts.filter((text) => text.startsWith('open')).length).toBe(1);
  });

  it('draws a radial as a tree from the board', () => {
    const { picture } = demoPicture('fernlow-close new-radial c4-radial1/circuit handbook');
    const scene = drawn(picture, 130);
    expect(scene.title).toBe('Circuit: Consumer unit');
    const ys = ['b3-kitchen', 'b2-kitchen', 'b1-kitchen'].map((id) => {
      const circle = groupsOf(scene, 'points')
        .find(({ subject }) => subject === id)
        ?.shapes.find((shape) => shape.kind === 'circle');
      return circle?.kind === 'circle' ? circle.at[1] : 0;
    });
    expect(ys).toEqual(ys.toSorted((a, b) => b - a));
  });

  it('names what no recorded cable joins to the board', () => {
    const { picture } = demoPicture('saltglass-row-quoting spurs-rcbo ring-house handbook');
    const notes = groupsOf(drawn(picture, 70), 'notes');
    expect(notes.length).toBe(picture.nodes.length - 1);
    expect(notes.every(({ title }) => title.endsWith('no recorded cable to the board'))).toBe(true);
  });

  it('is the same drawing for the same circuit', () => {
    const { picture } = demoPicture('saltglass-row spurs-rcbo ring-house handbook');
    expect(svgOf(drawn(picture, 130))).toBe(svgOf(drawn(structuredClone(picture), 130)));
  });
});

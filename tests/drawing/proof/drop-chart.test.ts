import { describe, expect, it } from 'vitest';
import { dropChart } from '#drawing/proof/drop-chart.ts';
import { demoPicture, demoPictures } from './demo-pictures.ts';
import { groupsOf, outside, overlaps, textsOf } from './scene-parts.ts';

describe('the chart of volt drop along a circuit', () => {
  it('shows each point once, every accessory named', () => {
    for (const { name, picture } of demoPictures())
      for (const widthMm of [73, 135]) {
        const scene = dropChart(picture, { widthMm });
        const points = [...groupsOf(scene, 'points'), ...groupsOf(scene, 'notes')];
        const expected = picture.nodes.filter(({ kind }) => kind !== 'board');
        expect(points.map(({ subject }) => subject).toSorted(), name).toEqual(
          expected.map(({ subject }) => subject).toSorted(),
        );
        const texts = textsOf(scene).map(({ text }) => text.split(' ')[0]);
        for (const { kind, label } of expected)
          if (kind === 'point') expect(texts, `${name} ${label}`).toContain(label);
      }
  });

  it('lets no lettering run into another or off the sheet', () => {
    for (const { name, picture } of demoPictures())
      for (const [widthMm, plotMm] of [
        [73, 76],
        [135, 76],
        [135, 40],
      ] as const) {
        const scene = dropChart(picture, { widthMm, plotMm });
        expect(overlaps(scene), `${name} ${widthMm}`).toEqual([]);
        expect(outside(scene), `${name} ${widthMm}`).toEqual([]);
      }
  });

  it('puts a point the lower the more volts it has lost, and beyond the line what is beyond the limit', () => {
    const { picture } = demoPicture('fernlow-close no-fuse-b3 ring-downs handbook');
    const scene = dropChart(picture, { widthMm: 135 });
    const yOf = (subject: string): number => {
      const circle = groupsOf(scene, 'points')
        .find((group) => group.subject === subject)
        ?.shapes.find((shape) => shape.kind === 'circle');
      return circle?.kind === 'circle' ? circle.at[1] : Number.NaN;
    };
    const points = picture.nodes.filter(({ kind }) => kind !== 'board');
    const byDrop = points
      .toSorted((a, b) => (a.dropV ?? 0) - (b.dropV ?? 0))
      .map(({ subject }) => yOf(subject));
    expect(byDrop).toEqual(byDrop.toSorted((a, b) => a - b));
    const limit = scene.layers
      .find(({ name }) => name === 'limits')
      ?.shapes.find((shape) => shape.kind === 'line' && shape.ink === 'mark-fails');
    const limitY = limit?.kind === 'line' ? (limit.points[0]?.[1] ?? 0) : 0;
    for (const { subject, dropV } of points)
      expect(yOf(subject) > limitY, subject).toBe((dropV ?? 0) > picture.dropLimitV);
    const titles = groupsOf(scene, 'points').map(({ title }) => title);
    expect(titles.filter((title) => title.includes('over the limit')).length).toBe(3);
  });

  it('names both limits with their percentages', () => {
    const { picture } = demoPicture('saltglass-row found ring-house handbook');
    const texts = textsOf(dropChart(picture, { widthMm: 135 })).map(({ text }) =>
      text.replaceAll('\u00a0', ' '),
    );
    expect(texts).toEqual(expect.arrayContaining(['Limit 11.5 V (5 %)', 'Lighting 6.9 V (3 %)']));
  });
});

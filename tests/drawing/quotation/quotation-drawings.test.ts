import { describe, expect, it } from 'vitest';
import { customerPlans } from '#drawing/quotation/customer-plan.ts';
import { quotationDrawings } from '#drawing/quotation/quotation-drawings.ts';
import type { Shape } from '#drawing/scene.ts';
import { openedFloors } from '#engine/ways/opened-floors.ts';
import { demoEstimate, schemeOf } from '../../engine/demo-jobs/demo-estimates.ts';
import { offering, quoted } from '../../engine/quotation/quoted.ts';

const room = { widthMm: 85, heightMm: 108 };
const flat = (shape: Shape): readonly Shape[] =>
  shape.kind === 'group' ? shape.shapes.flatMap(flat) : [shape];

describe('a customer’s drawing', () => {
  const scheme = schemeOf(demoEstimate('saltglass-row'), 'fused-beds');
  const plans = customerPlans(scheme, room);

  it('is of the storeys on which something is done, and fits its room', () => {
    expect(plans.map(({ storeyName }) => storeyName)).toEqual(['Ground floor', 'First floor']);
    for (const { scene } of plans) {
      expect(scene.widthMm).toBeLessThanOrEqual(room.widthMm + 1e-9);
      expect(scene.heightMm).toBeLessThanOrEqual(room.heightMm + 1e-9);
    }
    const radial = schemeOf(demoEstimate('fernlow-close'), 'new-radial');
    expect(customerPlans(radial, room).map(({ storeyName }) => storeyName)).toEqual(['Ground floor']);
  });

  it('names every new point once, those that are worked on, the fuse that is brought along and the fuse box', () => {
    const words = plans
      .flatMap(({ scene }) => scene.layers.flatMap(({ shapes }) => shapes.flatMap(flat)))
      .flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    for (const label of [
      'W1',
      'W2',
      'W3',
      'W4',
      'R1',
      'R6',
      'R8',
      'fuse',
      'fuse box',
      'Kitchen',
      'Bedroom 2',
    ])
      expect(words.filter((word) => word === label)).toEqual([label]);
    expect(words).not.toContain('R4');
  });

  it('marks as many opened floors as there are', () => {
    const squares = plans.flatMap(({ scene }) =>
      (scene.layers.find(({ name }) => name === 'floors')?.shapes ?? []).filter(
        (shape) => shape.kind === 'line' && shape.closed,
      ),
    );
    expect(squares.length).toBe(openedFloors(scheme.worked.runs, scheme.worked.plan).length);
  });

  it('tells new from there by shape, not by colour alone', () => {
    const circles = plans
      .flatMap(({ scene }) => scene.layers.find(({ name }) => name === 'points')?.shapes ?? [])
      .flatMap(flat)
      .flatMap((shape) => (shape.kind === 'circle' ? [shape] : []));
    const radii = (ink: string): readonly number[] => [
      ...new Set(circles.filter((one) => one.ink === ink).map(({ radiusMm }) => radiusMm)),
    ];
    expect([radii('symbol-new-solid'), radii('symbol')]).toEqual([[1.9], [1.1]]);
  });
});

describe('the drawings of a quotation', () => {
  it('are one a storey and scheme, harmless SVG, and the same twice', () => {
    const { paper, result } = quoted(offering('fernlow-close', { schemes: ['fused-unit', 'new-radial'] }));
    const drawings = quotationDrawings(paper, result);
    expect(drawings.storeys.map(({ schemeId, storeyName }) => `${schemeId} ${storeyName}`)).toEqual([
      'fused-unit Ground floor',
      'fused-unit First floor',
      'new-radial Ground floor',
    ]);
    for (const { svg } of [...drawings.storeys, drawings.legend])
      expect(svg).not.toMatch(/<script|<image|href=|style=|\son\w+=/i);
    expect(quotationDrawings(paper, result)).toEqual(drawings);
  });

  const explained = (name: 'fernlow-close' | 'saltglass-row', schemes: readonly string[], take?: string) => {
    const job = offering(name, { schemes: [...schemes] });
    const points = job.points.map((point) =>
      point.label === take ? { ...point, status: 'removed' as const } : point,
    );
    const { paper, result } = quoted({ ...job, points });
    const { legend } = quotationDrawings(paper, result);
    return [...legend.svg.matchAll(/<text[^>]*>([^<]*)</g)].map(([, words]) => words);
  };

  it('explain the signs that are drawn, and no others', () => {
    expect(explained('fernlow-close', ['new-radial'])).toEqual([
      'new, by its name',
      'new cable, hidden unless we say so',
      'socket there; named if worked on',
      'fuse box',
    ]);
    expect(explained('saltglass-row', ['fused-beds'])).toEqual([
      'new, by its name',
      'new cable, hidden unless we say so',
      'the floor is opened here',
      'socket there; named if worked on',
      'new fuse for what is behind it',
      'fuse box',
    ]);
    expect(explained('saltglass-row', ['fused-beds'], 'S1')).toContain('taken away, by its name');
  });

  it('are none where nothing is drawn', () => {
    const job = {
      ...offering('saltglass-row', {}),
      storeys: [],
      points: [],
      legs: [],
      schemes: [],
      boards: [],
      circuits: [],
      readings: [],
      answers: [],
    };
    const { paper, result } = quoted(job);
    expect(quotationDrawings(paper, result).storeys).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { terminalCapacity } from '#data/standards/terminal-capacity.ts';
import { capacityOfRun, capacityTogether } from '#engine/proof/capacity-of-run.ts';
import { fuseCarries } from '#engine/proof/fuse-carries.ts';
import { installedMethod } from '#engine/proof/installed-method.ts';
import { spurLoads } from '#engine/proof/spur-load.ts';
import { groupingFactor, surroundedFactor, tabulatedCapacity } from '#engine/proof/tabulated-capacity.ts';
import { fixedLoadWithin } from '#engine/rules/fixed-load-within.ts';
import { spurFeeds } from '#engine/rules/spur-feeds.ts';
import { terminals } from '#engine/rules/terminals.ts';
import {
  capacityOf,
  circuitOf,
  edgeOf,
  factsOf,
  nodeOf,
  nodePlaceOf,
  pointOf,
  runOf,
  saidBy,
  segmentOf,
  shapeOf,
  spurOf,
  terminalOf,
  twin25,
  twinOf,
} from '../engine/rules/facts-builder.ts';

describe('BS 7671 Table 4D5, flat twin with protective conductor', () => {
  it.each([
    // A public copy of the table prints the rows 1.0 and 1.5 mm² whole.
    [1, '100', 13],
    [1, '101', 10.5],
    [1, '102', 13],
    [1, '103', 8],
    [1, 'C', 16],
    [1, 'A', 11.5],
    [1.5, '100', 16],
    [1.5, '101', 13],
    [1.5, '102', 16],
    [1.5, '103', 10],
    [1.5, 'C', 20],
    [1.5, 'A', 14.5],
    // https://diynot.com/diy/threads/current-carrying-capacity-question.94235 and one more page
    [2.5, 'C', 27],
    // https://www.diynot.com/diy/threads/electrical-cables-underneath-loft-boarding.177830/
    [2.5, '102', 21],
    [2.5, '103', 13.5],
    // https://www.diynot.com/diy/goto/post?id=1577830
    [4, '103', 17.5],
    [4, 'C', 37],
    // https://www.diynot.com/diy/threads/radial-sockets-ahhh.201157/post-1410886
    [4, '100', 27],
  ] as const)('%d mm² by method %s carries %d A', (lineMm2, method, currentA) => {
    expect(tabulatedCapacity(twinOf(lineMm2), method)).toEqual({ currentA, grade: 'seen' });
  });

  it('has 2.5 mm² at 21, 17 and 20 A by methods 100, 101 and A (from memory)', () => {
    const cells = (['100', '101', 'A'] as const).map((method) => tabulatedCapacity(twin25, method));
    expect(cells).toEqual([
      { currentA: 21, grade: 'memory' },
      { currentA: 17, grade: 'memory' },
      { currentA: 20, grade: 'memory' },
    ]);
  });

  it('leaves 2.5 mm² below the 20 A of 433.1.204 by methods 101 and 103 only', () => {
    // Source: https://engx.theiet.org/f/wiring-and-regulations/24214/i-just-thought-of-something/103458
    const short = (['A', 'B', 'C', '100', '101', '102', '103'] as const).filter(
      (method) => (tabulatedCapacity(twin25, method)?.currentA ?? 0) < 20,
    );
    expect(short).toEqual(['101', '103']);
  });
});

describe('BS 7671 Table 4C1 with method B', () => {
  it('leaves two ring cables in one mini-trunking 18.4 A, below 20 A', () => {
    // Source: https://electriciansforums.net/threads/ring-circuit-in-mini-trunking.9542
    const currentA = tabulatedCapacity(twin25, 'B')?.currentA ?? 0;
    expect(currentA * groupingFactor(2, 'enclosed')).toBeCloseTo(18.4, 6);
  });

  it('leaves two clipped touching 22.95 A', () => {
    // Source: https://www.diybanter.com/1824-post4.html (27 A) and the 17th edition print of the table (0.85)
    const currentA = tabulatedCapacity(twin25, 'C')?.currentA ?? 0;
    expect(currentA * groupingFactor(2, 'layer')).toBeCloseTo(22.95, 6);
  });

  it('leaves two under one capping in plaster 21.6 A and three 18.9 A: a ring’s 20 A in the one, not in the other', () => {
    // Sources: https://www.diybanter.com/1824-post4.html (27 A by method C) and the 17th edition print of the table (0.80, 0.70 embedded)
    const chase = segmentOf({ medium: 'wall-chase', containment: 'capping' });
    const { plan } = factsOf({});
    const together = (cables: number) =>
      capacityTogether(plan, chase, { cable: twin25, cables, ambientC: undefined });
    expect([together(1), together(2), together(3)]).toEqual([27, 21.6, 18.9]);
  });

  it('leaves two in one oval tube 18.4 A: the 13 A of a fuse, not the 20 A of a ring', () => {
    // Source: https://electriciansforums.net/threads/ring-circuit-in-mini-trunking.9542 (23 A by method B)
    const tube = segmentOf({ medium: 'wall-chase', containment: 'oval' });
    const { plan } = factsOf({});
    const carriesA = capacityTogether(plan, tube, { cable: twin25, cables: 2, ambientC: undefined }) ?? 0;
    expect(carriesA).toBeCloseTo(18.4, 6);
    expect([carriesA >= 13, carriesA >= 20]).toEqual([true, false]);
  });

  it('prints 0.70 for three enclosed and 0.50 for nine', () => {
    // Source: https://fliphtml5.com/glisk/snup/17th_edition_iee_wiring_regulations/60/
    expect([groupingFactor(3, 'enclosed'), groupingFactor(9, 'enclosed')]).toEqual([0.7, 0.5]);
  });
});

describe('BS 7671 523.9', () => {
  it('halves the capacity of a cable surrounded for 0.5 m and more', () => {
    expect([surroundedFactor(500), surroundedFactor(3000)]).toEqual([0.5, 0.5]);
  });

  it('takes 0.88, 0.78, 0.63 and 0.51 for shorter lengths (Table 52.2, from memory)', () => {
    expect([50, 100, 200, 400].map(surroundedFactor)).toEqual([0.88, 0.78, 0.63, 0.51]);
  });
});

describe('methods by what a cable lies in', () => {
  it('takes cable capped in plaster for clipped direct (common practice, no source)', () => {
    const capped = segmentOf({ medium: 'wall-chase', containment: 'capping' });
    expect(installedMethod(capped, factsOf().plan)).toEqual({ method: 'C', surrounded: false });
  });
});

describe('a floor void', () => {
  const inVoid = (insulation: 'none' | null) => {
    const run = runOf('e1', [segmentOf({ medium: 'void-along', insulation })], { cable: twinOf(4) });
    return capacityOfRun(run, { plan: factsOf().plan, cablesInBundle: new Map() });
  };

  it('without insulation is clipped direct, so that 4 mm² takes 32 A (common practice, no source)', () => {
    // 37 A by method C: https://www.diynot.com/diy/goto/post?id=1577830
    expect(inVoid('none')).toMatchObject({ izA: 37, method: 'C' });
  });

  it('that nobody looked into leaves 4 mm² between 22 and 37 A, which 32 A lies within', () => {
    // BS 7671 Table 4D5: method 101 (over 100 mm of insulation) 22 A from memory, method C as above.
    const { izA, atBest } = inVoid(null);
    expect([izA, atBest?.izA]).toEqual([22, 37]);
  });
});

describe('BS 7671 433.1.1: Ib no more than In, In no more than Iz', () => {
  it('a 7 kW cooker draws 30.43 A, above the 27 A of 2.5 mm² clipped direct (arithmetic at 230 V)', () => {
    const facts = factsOf({
      job: {
        circuits: [circuitOf('c')],
        points: [pointOf('w', { kind: 'cooker-control', load: { watts: 7000, use: 'cooker', fixed: true } })],
      },
      proposed: {
        nodes: [nodeOf('w', { state: 'new' })],
        edges: [edgeOf('e1', 'r1', 'w', { state: 'new' })],
      },
      capacities: [capacityOf('e1')],
      shapes: [
        shapeOf('c', {
          places: [nodePlaceOf('w', { role: 'unfused-spur', upstreamEdgeId: 'e1', upstreamNode: 'r1' })],
        }),
      ],
    });
    expect(saidBy(fixedLoadWithin, facts)).toMatchObject([
      { outcome: 'fails', actual: 30.43, limit: 27, unit: 'A' },
    ]);
  });

  it('lets the trade’s 3 A fuse stand up to 700 W, 10 W over the arithmetic', () => {
    // Watts from a public page on portable appliance testing; 3 A × 230 V = 690 W.
    expect([690, 700, 701].map((watts) => fuseCarries(watts, 3))).toEqual(['within', 'by-practice', 'over']);
  });
});

describe('what twin outlets can draw', () => {
  const twins = (count: number) => {
    const ids = Array.from({ length: count }, (_, i) => `w${i}`);
    return factsOf({
      job: { points: ids.map((id) => pointOf(id)) },
      proposed: { nodes: ids.map((id) => nodeOf(id)) },
      shapes: [shapeOf('c', { spurs: [spurOf('spur@1', { accessoryNodes: ids })] })],
    });
  };

  it('is 26 A for one, two plugs of 13 A, and 52 A for two (common practice, no source)', () => {
    expect(spurLoads(twins(1), 'c')[0]?.possibleA).toBe(26);
    expect(spurLoads(twins(2), 'c')[0]?.possibleA).toBe(52);
  });

  it('lets an unfused spur feed one twin outlet and fails the second', () => {
    // Source: IET On-Site Guide 7.2.2 as quoted at dev-www.diynot.com, threads/correct-cable-size.470256, page 3
    expect(saidBy(spurFeeds, twins(1))[0]?.outcome).toBe('passes');
    expect(saidBy(spurFeeds, twins(2))[0]).toMatchObject({ outcome: 'fails', actual: 52, limit: 26 });
  });
});

describe('BS 1363-2 terminals', () => {
  it('take three 2.5, two 4 or one 6 mm²', () => {
    // Source: https://engx.theiet.org/f/wiring-and-regulations/28010/4mm-radial-off-a-32a-ring/120225
    expect(terminalCapacity.rows.map(({ conductors, areaMm2 }) => [conductors, areaMm2])).toEqual([
      [3, 2.5],
      [2, 4],
      [1, 6],
    ]);
  });

  it('do not take two 7/.029 and one 2.5 mm²: 8.46 mm² of 8 (7/.029 by its strands)', () => {
    // Seven strands of 0.029 inch diameter: 7 · π/4 · (0.029 · 25.4)² mm².
    const imperialMm2 = 7 * (Math.PI / 4) * (0.029 * 25.4) ** 2;
    const fill = terminalOf('r1', { areaMm2: 2 * imperialMm2 + 2.5 });
    const facts = factsOf({ shapes: [shapeOf('c')], things: { terminals: [fill] } });
    expect(saidBy(terminals, facts)).toMatchObject([
      { outcome: 'fails', messageId: 'tooMuch', actual: 8.47, limit: 8 },
    ]);
  });
});

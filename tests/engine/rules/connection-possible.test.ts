import { describe, expect, it } from 'vitest';
import type { EditProblem } from '#engine/circuit/network.ts';
import { connectionPossible } from '#engine/rules/connection-possible.ts';
import type { Connection } from '#model/scheme.ts';
import { circuitOf, factsOf, legOf, nodeOf, pointOf, saidBy, schemeOf } from './facts-builder.ts';

describe('connections that cannot be made', () => {
  it('[CN1] fails a wanted fused unit that is joined by a plain spur', () => {
    const facts = factsOf({
      job: { points: [pointOf('w4', { kind: 'fused-unit' })] },
      proposed: { problems: [{ connectionId: 'k1', code: 'unit-by-spur', subjectId: 'w4' }] },
    });
    expect(saidBy(connectionPossible, facts)).toEqual([
      { outcome: 'fails', messageId: 'unit-by-spur', subjectId: 'w4', origin: 'scheme' },
    ]);
  });

  it('[CN1] has words and a remedy for every problem', () => {
    expect(Object.keys(connectionPossible.remedies).sort()).toEqual(
      Object.keys(connectionPossible.messages).sort(),
    );
  });

  const extension: Connection = {
    id: 'k9x2q7b1zz',
    kind: 'ring-extension',
    circuit: 'c',
    between: [{ point: 'r1' }, { origin: 'c' }],
    out: { how: 'terminals' },
    back: { how: 'terminals' },
    through: [],
  };
  const problems: EditProblem[] = [
    { connectionId: extension.id, code: 'not-neighbours', subjectId: extension.id },
    { connectionId: extension.id, code: 'nothing-to-connect', subjectId: extension.id },
    { connectionId: extension.id, code: 'leg-elsewhere', subjectId: 'l1' },
    { connectionId: extension.id, code: 'joint-cut-away', subjectId: 'l1' },
    { connectionId: null, code: 'remedy-without-target', subjectId: 'remedy/rcd-unit' },
    { connectionId: null, code: 'remedy-without-target', subjectId: 'remedy/rcbo/b1' },
  ];

  it('[CN1] names connections, legs and remedies as people do, never by their ids', () => {
    const facts = factsOf({
      job: {
        points: [pointOf('r1'), pointOf('r2')],
        circuits: [circuitOf('c', { name: 'Kitchen ring' })],
        legs: [legOf('l1', 'r1', 'r2')],
      },
      scheme: schemeOf([extension]),
      proposed: { problems, nodes: [nodeOf('r1'), nodeOf('c', { kind: 'origin', circuitId: 'c' })] },
    });
    const connection = 'the ring extension between R1 and the board (Kitchen ring)';
    expect(connectionPossible.check(facts).map(({ values }) => values)).toEqual([
      { subject: connection, connection },
      { subject: connection, connection },
      { subject: 'R1 – R2', connection },
      { subject: 'R1 – R2', connection },
      { subject: 'a fused unit with an RCD', connection: 'the connection' },
      { subject: 'an RCBO', connection: 'the connection' },
    ]);
    expect(saidBy(connectionPossible, facts)).toHaveLength(problems.length);
  });

  it.each<[Connection, string]>([
    [{ id: 'k', kind: 'spur', from: { point: 'r1' }, to: 'w1' }, 'the spur to W1'],
    [
      { id: 'k', kind: 'fused-spur', from: { point: 'r1' }, unit: 'w1', feeds: [{ from: 'unit', to: 'w2' }] },
      'the fused spur to W1, W2',
    ],
    [{ id: 'k', kind: 'fused-spur', from: { point: 'r1' }, unit: {}, feeds: [] }, 'the fused spur'],
    [
      {
        id: 'k',
        kind: 'radial',
        board: 'b1',
        device: { standard: 'BS-EN-60898', ratingA: 20 },
        feeds: [{ from: 'origin', to: 'w1' }],
      },
      'the new radial to W1',
    ],
    [{ id: 'k', kind: 'fuse-down', leg: 'l1', unit: {}, feeds: [] }, 'the fusing down of R1 – W1'],
    [
      { id: 'k', kind: 'close-spur', point: 'r1', leg: 'l1', back: { how: 'terminals' } },
      'the closing of the spur at R1',
    ],
  ])('[CN1] names a connection by its points: %o', (connection, name) => {
    const facts = factsOf({
      job: { points: [pointOf('r1'), pointOf('w1'), pointOf('w2')], legs: [legOf('l1', 'r1', 'w1')] },
      scheme: schemeOf([connection]),
      proposed: { problems: [{ connectionId: 'k', code: 'nothing-to-connect', subjectId: 'k' }] },
    });
    expect(connectionPossible.check(facts)[0]?.values).toEqual({ subject: name, connection: name });
  });

  it('[CN1] says nothing of a scheme that can be done', () => {
    expect(saidBy(connectionPossible, factsOf())).toEqual([]);
  });
});

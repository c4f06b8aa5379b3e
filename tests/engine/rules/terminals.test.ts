import { describe, expect, it } from 'vitest';
import type { TerminalFill } from '#engine/connections/things.ts';
import { terminals } from '#engine/rules/terminals.ts';
import { factsOf, saidBy, shapeOf, terminalOf } from './facts-builder.ts';

const said = (fill: Partial<TerminalFill>) =>
  saidBy(terminals, factsOf({ shapes: [shapeOf('c')], things: { terminals: [terminalOf('r1', fill)] } }));

describe('conductors in terminals', () => {
  it('[TM1] passes three 2.5 mm², and exactly 8 mm²', () => {
    expect(said({})).toEqual([
      {
        outcome: 'passes',
        messageId: 'within',
        subjectId: 'r1',
        origin: 'scheme',
        actual: 7.5,
        limit: 8,
        unit: 'mm²',
      },
    ]);
    expect(said({ cables: 2, areaMm2: 8 })).toMatchObject([{ outcome: 'passes', actual: 8 }]);
  });

  it('[TM1] counts in words: one conductor, two conductors', () => {
    const counted = (cables: number) => {
      const facts = factsOf({
        shapes: [shapeOf('c')],
        things: { terminals: [terminalOf('r1', { cables, areaMm2: cables * 2.5 })] },
      });
      return terminals.check(facts)[0]?.values?.conductors;
    };
    expect([counted(1), counted(2)]).toEqual(['1 conductor', '2 conductors']);
  });

  it('[TM1] fails a fourth conductor', () => {
    expect(said({ cables: 4, areaMm2: 6 })).toMatchObject([
      { outcome: 'fails', messageId: 'tooMany', actual: 4, limit: 3, unit: 'conductors' },
    ]);
  });

  it('[TM1] fails two 7/.029 and one 2.5 mm² by their area', () => {
    expect(said({ areaMm2: 2.98 + 2.98 + 2.5 })).toMatchObject([
      { outcome: 'fails', messageId: 'tooMuch', actual: 8.46, limit: 8 },
    ]);
  });

  it('[TM1] is not proven where nobody counted, or where a size is not known', () => {
    expect(said({ counted: false })).toMatchObject([{ outcome: 'not-proven', messageId: 'notCounted' }]);
    expect(said({ counted: false, cables: 4, areaMm2: null })).toMatchObject([{ outcome: 'not-proven' }]);
    expect(said({ counted: false, cables: 6, newCables: 4, areaMm2: null })).toMatchObject([
      { outcome: 'fails' },
    ]);
    expect(said({ areaMm2: null })).toMatchObject([{ outcome: 'not-proven', messageId: 'sizeUnknown' }]);
  });

  it('[TM1] says why it is not proven where the usual number with the new ones would be too many', () => {
    const fill = terminalOf('r1', { counted: false, cables: 4, newCables: 2, areaMm2: null });
    const facts = factsOf({ shapes: [shapeOf('c')], things: { terminals: [fill] } });
    expect(terminals.check(facts)).toMatchObject([
      { outcome: 'not-proven', messageId: 'overIfUsual', values: { old: 2, actual: 4, limit: 3 } },
    ]);
  });

  it('[TM1] tells of terminals that the scheme leaves alone only where they are wrong', () => {
    expect(said({ affected: false, newCables: 0 })).toEqual([]);
    expect(said({ affected: false, newCables: 0, cables: 4 })).toMatchObject([
      { outcome: 'fails', origin: 'found' },
    ]);
  });
});

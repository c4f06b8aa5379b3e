import { describe, expect, it } from 'vitest';
import { coreColours, mistaken } from '#data/standards/core-colours.ts';
import { coloursOfFound, coloursOfNew } from '#engine/work/core-colour.ts';

/**
 * Colours of single-phase fixed wiring and their days: IEE Wiring Matters 2004, “All change! New colours agreed”
 * (https://id.scribd.com/document/130864058/All-Change-New-Colours-Agreed), and
 * https://online.flipbuilder.com/hzzr/jtap/files/basic-html/page6.html.
 */
describe('core colours as published', () => {
  it('are red and black until 31 March 2006, brown and blue from 31 March 2004', () => {
    expect(
      coreColours.rows.map(({ line, neutral, earth, firstDay, lastDay }) => [
        line,
        neutral,
        earth,
        firstDay,
        lastDay,
      ]),
    ).toEqual([
      ['red', 'black', 'green-yellow', null, '2006-03-31'],
      ['brown', 'blue', 'green-yellow', '2004-03-31', null],
    ]);
  });

  it('name the two that changed their meaning: black, and blue', () => {
    expect(mistaken.map(({ colour, old, now }) => [colour, old, now])).toEqual([
      ['black', 'neutral', 'line of a second phase'],
      ['blue', 'line of a third phase', 'neutral'],
    ]);
  });

  it('are on every cable bought now, and as surveyed on one found', () => {
    const twin = { type: 'flat-twin', lineMm2: 2.5, cpcMm2: 1.5 } as const;
    expect(coloursOfNew(twin)).toEqual({ line: 'brown', neutral: 'blue', earth: 'bare' });
    expect(coloursOfFound(twin, undefined, { colours: 'old' })).toEqual({
      line: 'red',
      neutral: 'black',
      earth: 'bare',
    });
    expect(coloursOfFound(twin, { asFound: { colours: 'new' } }, { colours: 'old' }).line).toBe('brown');
    expect(coloursOfFound(twin, undefined, { colours: 'mixed' }).line).toBeNull();
    expect(coloursOfFound(null, undefined, null).line).toBeNull();
    expect(coloursOfNew({ ...twin, type: 'steel-wire-armoured' }).line).toBeNull();
  });
});

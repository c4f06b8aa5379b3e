import { describe, expect, it } from 'vitest';
import type { SheetTest } from '#engine/work/tests/sheet-test.ts';
import { testSheet } from '#engine/work/tests/test-sheet.ts';
import { demoEstimate, schemeOf } from '#tests/engine/demo-jobs/demo-estimates.ts';
import { filled, testsIn } from '#tests/engine/work/tests/filled.ts';
import { TestRow } from '../../../ui/elements/papers/work/test-row.ts';
import { bound, sentBy, tell, templateOf, textOf } from './rendered.ts';

const scheme = schemeOf(demoEstimate('saltglass-row'), 'spurs-rcbo');
const tests = testsIn(testSheet(scheme));
const testOf = (group: string, from = tests): SheetTest => {
  const found = from.find((test) => test.group === group);
  if (found === undefined) throw new Error(`no test ${group}`);
  return found;
};
function rowOf(test: SheetTest): TestRow {
  const row = new TestRow();
  row.test = test;
  return row;
}
const shown = (test: SheetTest) => templateOf(rowOf(test));
const changed = (value: unknown): Event => new CustomEvent('field-change', { detail: { value } });

describe('the row of a test', () => {
  it('says what is expected, the band and the limit, and asks for a figure in its unit', () => {
    const row = shown(testOf('zs'));
    expect(textOf(row)).toMatch(/Expected .*Ω, band .* to .*Ω; Limit: at most 1\.09\sΩ\./);
    expect(bound(row, 'number-field', '.unit')).toEqual(['Ω']);
    expect(bound(row, 'number-field', '.label')[0]).toMatch(/^Reading at /);
  });

  it('asks a question of what is either so or not', () => {
    expect(bound(shown(testOf('polarity')), 'yes-no-field', '.label')).toEqual(['Right?']);
    expect(bound(shown(testOf('rcd-button')), 'yes-no-field', '.label')).toEqual(['Opened?']);
    const surge: SheetTest = {
      ...testOf('rcd-button'),
      group: 'spd-indicator',
      asked: { kind: 'spd-indicator' },
    };
    expect(bound(shown(surge), 'yes-no-field', '.label')).toEqual(['Does it protect?']);
    expect(textOf(shown(surge))).toContain('Must be: protects.');
  });

  it('takes no more of a fault current than the job file does, and shows it in kA', () => {
    const current = tests.find(({ unit }) => unit === 'kA');
    if (current === undefined) throw new Error('no fault current');
    const row = shown(current);
    expect(bound(row, 'number-field', '.unit')).toEqual(['kA']);
    expect(bound(row, 'number-field', '.max')).toEqual([1000]);
    // The survey has 0.96 kA.
    expect(textOf(row)).toMatch(/Expected 0\.96\skA, band 0\.79 to 1\.21\skA/);
  });

  it('tells what was entered with its test, null where it was emptied', () => {
    const test = testOf('zs');
    const row = rowOf(test);
    const told = (value: number | null) =>
      sentBy(row, 'test-answered', () => tell(templateOf(row), 'number-field', changed(value)));
    expect(told(0.5)).toEqual([{ test, value: 0.5 }]);
    expect(told(null)).toEqual([{ test, value: null }]);
  });

  it('says how it came out once it is read, and nothing before', () => {
    const read = (value: number | boolean) =>
      testOf('zs', testsIn(filled(scheme, ({ group }) => (group === 'zs' ? value : null))));
    const fails = shown(read(9));
    expect(textOf(fails)).toMatch(/Fails\. The limit is at most 1\.09/);
    expect(bound(fails, 'outcome-mark', 'outcome')).toEqual(['fails']);
    expect(bound(shown(testOf('zs')), 'outcome-mark', 'outcome')).toEqual([]);
  });

  it('has no field where no point of the job stands for what is tested', () => {
    const row = shown({ ...testOf('zs'), isKept: false });
    expect(textOf(row)).toContain('On paper: no point of the job stands for it.');
    expect(bound(row, 'number-field', '.value')).toEqual([]);
  });
});

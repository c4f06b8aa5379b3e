import { describe, expect, it } from 'vitest';
import { remembered, rememberedOfTwo } from '#engine/plan/remembered.ts';

describe('a remembered function', () => {
  it('works the answer to one object out once, an empty answer too', () => {
    const asked: object[] = [];
    const answer = remembered((of: object) => {
      asked.push(of);
      return undefined;
    });
    const [one, other] = [{}, {}];
    for (const each of [one, one, other, one]) expect(answer(each)).toBeUndefined();
    expect(asked).toEqual([one, other]);
    expect(asked[1]).toBe(other);
  });

  it('goes by the object itself, not by what it says', () => {
    const size = remembered((list: readonly number[]) => ({ size: list.length }));
    const list = [1, 2];
    expect(size(list)).toBe(size(list));
    expect(size([1, 2])).not.toBe(size(list));
    expect(size([1, 2, 3])).toEqual({ size: 3 });
  });

  it('takes two objects as a pair', () => {
    let works = 0;
    const pair = rememberedOfTwo((a: { a: number }, b: { b: number }) => {
      works += 1;
      return a.a * 10 + b.b;
    });
    const [one, two] = [{ a: 1 }, { a: 2 }];
    const [three, four] = [{ b: 3 }, { b: 4 }];
    const answers = [pair(one, three), pair(one, four), pair(two, three), pair(two, four), pair(one, three)];
    expect(answers).toEqual([13, 14, 23, 24, 13]);
    expect(works).toBe(4);
  });
});

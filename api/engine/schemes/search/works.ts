/** What some work comes to: money in thousandths of a penny, and disturbance in the norms' points, to whole thousandths. */
export interface Works {
  readonly millipence: number;
  readonly mess: number;
}

export const noWorks: Works = { millipence: 0, mess: 0 };

/** Points to whole thousandths, so that sums are the same in any order. */
export const wholeMess = (points: number): number => Math.round(points * 1000) / 1000;

/** All of it together. */
export function worksTogether(all: Iterable<Works>): Works {
  let [millipence, mess] = [0, 0];
  for (const each of all) {
    millipence += each.millipence;
    mess += each.mess;
  }
  return { millipence, mess: wholeMess(mess) };
}

/** The same work so many times. */
export const worksTimes = ({ millipence, mess }: Works, times: number): Works => ({
  millipence: millipence * times,
  mess: wholeMess(mess * times),
});

/** What one is more than the other. */
export const worksLess = (one: Works, other: Works): Works => ({
  millipence: one.millipence - other.millipence,
  mess: wholeMess(one.mess - other.mess),
});

import type { Worked } from '../../connections/worked.ts';
import type { OpenMatter, OpenOutcome } from '../outcomes/open-matter.ts';
import { rcboMatters, rcdMatters } from '../outcomes/rcd-matters.ts';
import type { House } from '../work-scheme.ts';
import type { PriceTurn } from './price-turn.ts';

/** What the kit hangs on as what the price hangs on: the first outcome is counted, an RCD that is there already saves one. */
function turnOf(question: string, { subjects, outcomes }: OpenMatter): readonly PriceTurn[] {
  const [subjectId] = subjects;
  if (subjectId === undefined) return [];
  const [, ...others] = outcomes;
  const saves = ({ id }: OpenOutcome): boolean => id === 'there';
  return [
    {
      question,
      subjectId,
      cheaper: others.filter(saves).map(({ change }) => change),
      dearer: others.filter((outcome) => !saves(outcome)).map(({ change }) => change),
    },
  ];
}

/** The circuits that nobody knows of whether they are behind an RCD, where that decides what is fitted; by circuit. */
export const rcdTurns = (house: House, worked: Worked): readonly PriceTurn[] =>
  rcdMatters(house, worked).flatMap((matter) => turnOf('rcd-found', matter));

/** The boards whose maker may not sell the RCBO that is counted; by board. */
export const rcboTurns = (worked: Worked): readonly PriceTurn[] =>
  rcboMatters(worked).flatMap((matter) => turnOf('rcbo-available', matter));

import { html, type TemplateResult } from 'lit';
import type { Service } from '#engine/rules/bonds.ts';
import type { SurveyAsk } from '#engine/schemes/estimate-result.ts';
import type { AskField } from '#engine/survey/ask.ts';
import type { Job } from '#model/job.ts';
import { setRcdBefore } from '../../edits/survey.ts';
import type { JobView } from '../../job-view.ts';
import { newId } from '../../new-id.ts';
import { answerField, questionOf } from './answer-field.ts';
import { bondField } from './bond-field.ts';
import { deviceFields } from './device-fields.ts';
import { choiceFact, numberFact, textFact, yesNoFact } from './fact-fields.ts';
import { boardFacts, floorFacts, plateFacts, siteFacts, supplyFacts } from './facts-of.ts';
import { earthings, tenures } from './found-words.ts';
import { sourcesField } from './sources-field.ts';
import { wallCoreField } from './wall-core-field.ts';

/** The control that answers one field of an ask, in place; null where the thing's own form, or nothing yet, does. */
export function askField(view: JobView, ask: SurveyAsk, field: AskField): TemplateResult | null {
  const { job } = view;
  const { subjectId, fact } = field;
  if (fact === 'answer') {
    const question = questionOf(ask.id);
    return question === undefined ? null : answerField(job, question);
  }
  if (subjectId === 'supply') return supplyField(job, fact);
  if (subjectId === 'site') return siteField(job, fact);
  return (
    boardField(job, field) ??
    circuitField(job, field) ??
    plateField(job, field) ??
    floorField(job, field) ??
    (fact === 'core' ? wallCoreField(view, subjectId) : null)
  );
}

function supplyField({ supply }: Job, fact: string | null): TemplateResult | null {
  const facts = supplyFacts(supply);
  if (fact?.startsWith('bond-') === true) return bondField(supply, fact.slice('bond-'.length) as Service);
  switch (fact) {
    case 'earthing':
      return choiceFact(facts, 'earthing', { label: 'Earthing', options: earthings });
    case 'mainFuseA':
      return numberFact(facts, 'mainFuseA', { label: 'Main fuse', unit: 'A', min: 1, max: 10_000 });
    case 'tailsMm2':
      return numberFact(facts, 'tailsMm2', { label: 'Meter tails', unit: 'mm²', min: 0.1, max: 1000 });
    case 'earthingMm2':
      return numberFact(facts, 'earthingMm2', {
        label: 'Earthing conductor',
        unit: 'mm²',
        min: 0.1,
        max: 1000,
      });
    case 'zeOhm':
      return numberFact(facts, 'zeOhm', { label: 'Ze, outside the house', unit: 'Ω', max: 1e7 });
    case 'pfcKA':
      return numberFact(facts, 'pfcKA', { label: 'Prospective fault current', unit: 'kA', max: 1000 });
    case 'otherSources':
      return sourcesField(supply);
    default:
      return null;
  }
}

function siteField({ site }: Job, fact: string | null): TemplateResult | null {
  const facts = siteFacts(site);
  if (fact === 'builtBefore2000') return yesNoFact(facts, 'builtBefore2000', { label: 'Built before 2000' });
  return fact === 'tenure'
    ? choiceFact(facts, 'tenure', { label: 'Who lives there', options: tenures })
    : null;
}

function boardField({ boards }: Job, { subjectId, fact }: AskField): TemplateResult | null {
  const board = boards.find(({ id }) => id === subjectId);
  if (board === undefined) return null;
  const facts = boardFacts(board);
  if (fact === 'rcboAvailable')
    return yesNoFact(facts, 'rcboAvailable', { label: `${board.label}: an RCBO is still sold for it` });
  if (fact === 'make') return textFact(facts, 'make', { label: `${board.label}: make and model` });
  return fact === 'spareWays'
    ? numberFact(facts, 'spareWays', { label: `${board.label}: spare ways`, unit: '', max: 200, whole: true })
    : null;
}

function circuitField(job: Job, { subjectId, fact, state }: AskField): TemplateResult | null {
  const circuit = job.circuits.find(({ id }) => id === subjectId);
  if (circuit === undefined) return null;
  if (fact === 'device')
    return html`<h4>${circuit.name}</h4>
      ${deviceFields(circuit)}`;
  if (fact !== 'upstreamRcd') return null;
  const rcd = job.boards.flatMap(({ rcds }) => rcds).find(({ id }) => id === circuit.upstreamRcd);
  const isOwn = circuit.device?.rcd !== undefined;
  const found = rcd !== undefined || isOwn ? 'there' : state === 'open' ? undefined : 'none';
  const set = setRcdBefore(circuit, newId);
  return choiceFact(
    {
      thing: { upstreamRcd: found },
      certainty: circuit.certainty,
      set: (_: 'upstreamRcd', word: 'there' | 'none' | null) => set.found(word),
      sure: (_: 'upstreamRcd', certainty) => set.sure(certainty),
    },
    'upstreamRcd',
    {
      label: `${circuit.name}: an RCD of 30 mA`,
      options: [
        { value: 'there', label: isOwn ? 'Yes, its own' : 'Yes, before it' },
        { value: 'none', label: 'None' },
      ],
      help: isOwn ? 'It is an RCBO, as read off the device.' : '',
    },
  );
}

function plateField({ points }: Job, { subjectId, fact }: AskField): TemplateResult | null {
  const point = points.find(({ id }) => id === subjectId);
  if (point === undefined) return null;
  const facts = plateFacts(point);
  if (fact === 'boxDepthMm')
    return numberFact(facts, 'boxDepthMm', {
      label: `${point.label}: depth of its box`,
      unit: 'mm',
      max: 1_000_000,
    });
  return fact === 'cablesSeen'
    ? numberFact(facts, 'cablesSeen', {
        label: `${point.label}: cables in it`,
        unit: '',
        max: 20,
        whole: true,
      })
    : null;
}

function floorField({ storeys }: Job, { subjectId, fact }: AskField): TemplateResult | null {
  const storey = storeys.find(({ id }) => id === subjectId);
  if (storey === undefined || fact !== 'liftable') return null;
  return yesNoFact(floorFacts(storey), 'liftable', { label: `${storey.name}: the boards lift` });
}

import { type CheckResult, rule } from './rule.ts';

type Message = 'armoured' | 'outside' | 'buried';

/** Runs out of doors and in the ground are made for sun, water and spades. */
export const outdoorRun = rule({
  id: 'RT11',
  title: 'Runs outside and in the ground',
  source: 'BS 7671 522.3, 522.8.10, 522.11',
  messages: {
    armoured: 'The run outside is in armoured cable.',
    outside: 'The run goes outside in {actual} cable, which sun and weather harm.',
    buried:
      'The run is buried in {actual} cable: in the ground, earthed armour, a duct or equal protection and a sufficient depth are asked for.',
  },
  remedies: {
    outside: 'Use armoured or other outdoor cable, or keep the run inside.',
    buried:
      'Use armoured cable at a depth that spades do not reach, with warning tape; in a screed use earthed metal conduit.',
  },
  couldFail: false,
  check: (facts) =>
    facts.runs.flatMap<CheckResult<Message>>((run) => {
      const subject = { subjectId: run.id, origin: 'scheme', actual: run.cable.type } as const;
      const media = run.segments.map(({ medium }) => medium);
      if (!media.includes('buried') && !media.includes('outside')) return [];
      if (run.cable.type === 'steel-wire-armoured')
        return [{ ...subject, outcome: 'passes', messageId: 'armoured' }];
      const messageId = media.includes('buried') ? ('buried' as const) : ('outside' as const);
      return [{ ...subject, outcome: 'decide', messageId }];
    }),
});

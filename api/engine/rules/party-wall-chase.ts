import { wallsInWords } from '../plan/wall-words.ts';
import { rule } from './rule.ts';
import { stretchesInWalls } from './wall-stretch.ts';

/** Chases are kept out of walls shared with the neighbours. */
export const partyWallChase = rule({
  id: 'RT8',
  title: 'Chases in party walls',
  source: 'Approved Document E; BS 7671 527.2',
  messages: {
    chased: 'The run is cut into {wall}, a party wall, which keeps sound and fire from the neighbours.',
  },
  remedies: {
    chased: 'Use another wall or surface channel; else a shallow chase, filled solid, never back to back.',
  },
  couldFail: false,
  check: (facts) => {
    const inParty = stretchesInWalls(facts).filter(({ wall }) => wall.wall.party === true);
    return facts.runs.flatMap((run) => {
      const walls = inParty.filter((stretch) => stretch.run.id === run.id).map(({ wall }) => wall.wall.id);
      if (walls.length === 0) return [];
      return [
        {
          outcome: 'decide',
          messageId: 'chased',
          subjectId: run.id,
          origin: 'scheme',
          values: { wall: wallsInWords(facts.plan, walls) },
        },
      ];
    });
  },
});

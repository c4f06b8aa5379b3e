import { type BoxInWall, boxesCutIn } from './box-wall.ts';
import { figures } from './figures.ts';
import { type CheckResult, rule } from './rule.ts';

/** Plaster or board on each face of a wall, mm. Common practice, no source. */
const COAT_MM = 13;

/** Boxes leave enough of the wall behind them. */
export const boxInThinWall = rule({
  id: 'BX2',
  title: 'Boxes in thin walls',
  source: 'common practice',
  messages: {
    fits: 'The box reaches {actual} mm into the wall, of {limit} mm that may be used.',
    masonry: 'The box reaches {actual} mm into the wall; more than half of it ({limit} mm) is cut away.',
    stud: 'The box reaches {actual} mm into the wall; the space between the boards is {limit} mm.',
  },
  remedies: {
    masonry: 'Use a shallower box with a spacer frame, or a surface box.',
    stud: 'Use a shallower dry-lining box, or a surface box.',
  },
  couldFail: false,
  check: (facts) => boxesCutIn(facts).map(judged),
});

function judged({ box, wall }: BoxInWall): CheckResult<'fits' | 'masonry' | 'stud'> {
  const { core, thicknessMm } = wall.wall;
  const stud = core === 'timber-stud' || core === 'metal-stud';
  const roomMm = stud ? thicknessMm - COAT_MM : thicknessMm / 2;
  const fits = box.depthMm <= roomMm;
  return {
    outcome: fits ? 'passes' : 'decide',
    messageId: fits ? 'fits' : stud ? 'stud' : 'masonry',
    subjectId: box.id,
    origin: 'scheme',
    ...figures(box.depthMm, roomMm, 'mm'),
  };
}

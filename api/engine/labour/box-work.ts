import type { BackBox } from '../connections/things.ts';
import type { Worked } from '../connections/worked.ts';
import type { Filling } from '../ways/way-tariff.ts';
import { type Amount, certain, possible } from './amount.ts';
import { fillingTasks } from './filling-tasks.ts';
import type { TaskId } from './known-tasks.ts';

const masonryTask: Readonly<Record<string, 'block' | 'hard-brick' | 'concrete'>> = {
  brick: 'block',
  block: 'block',
  'aerated-block': 'block',
  'hard-brick': 'hard-brick',
  concrete: 'concrete',
};

function boxTask({ build, lining, finish, wallCore, gangs }: BackBox): TaskId {
  if (build === 'surface') return 'box-surface';
  if (lining === 'dot-and-dab') return 'box-dot-and-dab';
  const masonry = wallCore === null ? undefined : masonryTask[wallCore];
  if (masonry !== undefined) return `box-${masonry}-${gangs > 1 ? 'twin' : 'single'}`;
  if (finish === 'lath-and-plaster') return 'box-lath-and-plaster';
  const stud = wallCore === 'timber-stud' || wallCore === 'metal-stud';
  return stud || (wallCore !== null && build === 'dry-lining') ? 'box-dry-lining' : 'box-unknown-wall';
}

/** Everything that fitting one box asks for, old box or none, or the frame over an old one. */
function tasksOf(box: BackBox, filling: Filling): readonly TaskId[] {
  if (box.frameMm !== undefined) return ['fit-frame'];
  const flush = box.build !== 'surface';
  return [
    ...(box.action === 'fit' ? [] : (['remove-box'] as const)),
    boxTask(box),
    ...(flush && box.finish === 'tile' ? (['cut-tile'] as const) : []),
    ...(flush && box.party ? (['fit-putty-pad'] as const) : []),
    ...(box.build === 'steel' ? [fillingTasks[filling].box] : []),
  ];
}

/** Back boxes by the wall they go into; a found box of unknown depth may have to be exchanged, or framed. */
export function boxWork({ things, tariff }: Worked): readonly Amount[] {
  return things.boxes
    .filter(({ action }) => action !== 'keep')
    .flatMap((box) =>
      tasksOf(box, tariff.filling).map((task) =>
        box.action === 'unknown' ? possible(task, box.id) : certain(task, box.id),
      ),
    );
}

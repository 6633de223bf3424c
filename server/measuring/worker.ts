// Runs in a worker thread: core's pixel work takes a second and its WebAssembly needs its own heap.
import { checkEmptyPhoto } from './check-empty-photo.ts';
import { foretellCuts } from './foretell-cuts.ts';
import { hullOfSitting, joinSitting } from './join-sitting.ts';
import { learnFromFiles } from './learn-from-files.ts';
import { measureFile } from './measure-file.ts';
import { stemsOfSitting } from './place-stems.ts';
import { warmUp } from './warm-up.ts';
import { watchedJobs } from './watched-job.ts';

export default watchedJobs(
  {
    default: measureFile,
    learn: learnFromFiles,
    checkEmpty: checkEmptyPhoto,
    join: joinSitting,
    hull: hullOfSitting,
    stems: stemsOfSitting,
    foretell: foretellCuts,
  },
  warmUp,
);

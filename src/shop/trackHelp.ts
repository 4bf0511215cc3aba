import { ANSWERS } from './fit/settle.js';
import { STEPS } from './log/step.js';

/** How the command `track` is called. */
export const TRACK_HELP = `chamberwright track JOB                       where the board stands
chamberwright track JOB BLOCK...              what is known about these blocks
chamberwright track JOB BLOCK... STEP         record a step: ${STEPS.join(', ')}
      --undo                                  undo the step
chamberwright track JOB BLOCK... ANSWER       what was done about a changed plan: ${ANSWERS.join(', ')}
      --who NAME   --note TEXT                who did it; something to remember
chamberwright track JOB export FILE.csv       the tracking list with what is done
chamberwright track JOB import FILE.csv       take over what such a list says is done (adds, never undoes)
chamberwright track JOB serve                 the page for the shop, on this machine only
      --share [ADDRESS]                       let phones in the same network in, each by a code
      --port NUMBER
chamberwright track JOB forget-phones         shut out every phone let in so far
chamberwright track JOB take FROM             add what another tracker file, or a server, holds and this one does not
With each: --store postgres://USER@HOST/DATABASE   the board is kept on that server, for several workshops, instead of in the file
                                              beside the job; its password comes from the environment (PGPASSWORD) or from .pgpass`;

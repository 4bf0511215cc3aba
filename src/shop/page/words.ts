import type { Answer } from '../fit/settle.js';
import type { Step } from '../log/step.js';

/** What the page says. Plain sentences, one place. */
export const STEP_DONE: Readonly<Record<Step, string>> = {
  marked: 'Marked',
  cut: 'Cut',
  sanded: 'Sanded',
  'dry-fitted': 'Dry-fitted',
  glued: 'Glued',
};

/** What is still to be done to a block that has not reached a step. */
export const STEP_TO_DO: Readonly<Record<Step, string>> = {
  marked: 'to mark',
  cut: 'to cut',
  sanded: 'to sand',
  'dry-fitted': 'to dry-fit',
  glued: 'to glue',
};

/** What was done about a changed plan. */
export const ANSWER_GIVEN: Readonly<Record<Answer, string>> = {
  trimmed: 'Trimmed',
  turned: 'Turned, nose and deck marked anew',
  kept: 'Kept as it is',
  'marked-again': 'Marked again',
  'made-new': 'Made new: cut to this plan',
};

export const CAUTIONS: Readonly<Record<Step, string>> = {
  marked: 'Mark from the printed list, and mark the nose end and the deck edge on every block.',
  cut: 'Saw: guard on, push stick for short blocks, eyes and ears covered. Hot wire: fresh air, do not breathe foam fumes. Follow the machine’s own instructions.',
  sanded:
    'Foam and wood dust: extraction at the tool and a fitted mask. Cedar and redwood dust can make you allergic for good.',
  'dry-fitted': 'Press, do not hammer: a tight block can split a thin skin. Take it down and try again.',
  glued:
    'Polyurethane glue gives off isocyanate, resins and hardeners harm skin: gloves, fresh air, eyes covered, as the product’s safety sheet says. Not for anyone who reacts to isocyanates.',
};

export const CAUTIONS_DEFER =
  'The safety sheet of each product, the instructions of each machine and the rules of your country come before anything said here. Where a rule asks for a licence or training, leave that work to somebody who has it.';

export const OPEN_TIME_WORDS =
  'The open time is on the glue’s data sheet and gets shorter when it is warm. Enter that number; this clock knows nothing about your glue.';

export const SHARED_WORDS =
  'Each code lets in one phone. Without a code nobody can read or write here. Nothing is encrypted on the way: use your own network, not a guest or public one.';

export const NOT_SHARED_WORDS = 'No phone can connect yet. To let phones in, start the tracker with --share.';

export const WELCOME_WORDS =
  'Scan the code on the screen of the machine that holds the job, or type it here. Each code lets in one phone.';

export const KEEPS_NOTHING_WORDS =
  'This browser keeps nothing on the phone (a private window?). What could not be sent is lost when the page is closed.';

export const PLAIN_HTTP_WORDS =
  'Without a connection, go on in this open page: it keeps what you press and sends it later. The page cannot be opened again until the connection is back; the printed list still works.';

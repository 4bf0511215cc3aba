import { sheetNames } from '../print/paper/paper.js';
import { TRACK_HELP } from '../shop/trackHelp.js';

/** How each command is called and what it does. Nothing heavy is loaded to say it. */
export const USAGE = {
  new: `new FILE
    Begins a job file: a small board with every key explained, to be changed into yours.`,
  plan: `plan JOB [--json]
    Plans the chambers and says what comes out: board, rows, every chamber with its thinnest walls, blocks, weights, what was left solid
    and why, and whether the plan stands. --json prints the same as data, in millimetres and kilograms.`,
  check: `check JOB [--all] [--depth-error 1/16in]
    Proves the walls, nothing else, and names each wall that is too thin: chamber, place and by how much. Where the job says what was
    measured after shaping, the chambers as drawn are proved on the board as it is, and it says how many must shrink,
    the worst and by how much in each row; --all names every one with its new size.
    --depth-error asks whether the plan bears a router set too deep by so much; a bare number is in the job's units.`,
  papers: `papers JOB -o FOLDER [--dry] [--paper A4] [--roll 610mm] [--only face-R2,pole] [--with NAMES] [--without NAMES]
    [--phase routing] [--labels STOCK] [--date 2026-05-01]
    Writes the papers: a PDF to print at actual size, one to look at, every full-size sheet as SVG and DXF in millimetres, and the lists
    for a spreadsheet. --dry only says how many pages of what, and how much tape. --paper takes ${sheetNames.join(', ')}; --roll, instead, the width of a roll;
    --only some papers by name (a wrong name lists them all), --with more than the usual ones, --without some of them; --phase those of one phase of the work (a wrong name lists them all), its page of the build book first; --margin what the printer cannot print (bare lengths are in the job's units); --revision a mark for the title
    blocks; --csv ';'
    parts the lists by semicolons, with decimal commas (';.' with points); --track-at the tracker's address (http://192.168.1.20:4718), so that a phone's camera opens a block by its label;
    --store the PostgreSQL server that the tracker is kept on, for the ticks of the tracking list. What it
    wrote into the folder before, of this board or another, it replaces or removes, but never a file that is yours or that you edited.`,
  measured: `measured JOB [--from LIST.csv [--write]]
    Asks for what was measured after shaping: thickness and width at the stations, then anywhere else, walls at chambers, weights. Each
    answer is held against the board at once. Then it says what goes into the job's shaped: and weighings: and what the walls are with it,
    and writes it when told to; all else in the file stays as it is. Stopped half way, what was measured is kept for the next time.
    --from takes a list instead, with columns named as the keys of the job: at, side, thickness, width, chamber, deck, bottom, rail,
    stage, weight; it says what would be written, and --write writes it.`,
  routed: `routed JOB ROW... [--undo]
    Says that these rows are routed: their chambers as they are planned now are written beside the job, and with routed: in the job every
    later plan keeps them, whatever is changed or measured, and proves them anew. --undo takes rows out again.`,
  mesh: `mesh JOB -o FILE.stl
    Writes the finished surface that the walls are proved against (as measured, where the job says what was measured after shaping; of a
    scan its own triangles) as a closed mesh in mm, binary STL, or PLY or OBJ by the ending of the name, so that anyone with a
    solid-geometry program can prove the plan wrong.`,
  steer: `steer JOB
    Finds the plan that meets the job's target (weight or balance) with its walls as thick as can be, and says what to write into the job;
    or how close it comes and what stands in the way.`,
  open: `open JOB [--port N] [--no-browser]
    Shows the plan in the browser, to be changed there: from above, the rows on the bench, cross-sections, weights.
    The page is for this machine only. The address holds its key: give it to nobody.`,
  track: TRACK_HELP.replace('chamberwright ', ''),
} as const;

import words from '../../templates/command.json' with { type: 'json' };
import { printArealWeight } from '../length/areal.js';
import { printExactly } from '../length/exactly.js';
import { printLength } from '../length/length.js';
import { printWeight } from '../length/weight.js';
import { planOf } from '../plan.js';
import { steer, WALLS, type Hindrance } from '../steer/steer.js';
import { understood } from '../typed/args.js';
import { REFUSED, TO_ACT_ON, WELL, type Command } from './io.js';
import { jobFrom } from './jobFile.js';
import { judged } from './judged.js';
import { refuse } from './refuse.js';

const LEVER: Readonly<Record<Hindrance['lever'], string>> = {
  deckSkin: 'deck skin',
  bottomSkin: 'bottom skin',
  railWall: 'rail wall',
  web: 'web',
  walls: 'walls',
  fill: 'fill',
  cloth: 'cloth',
};
const AT: Readonly<Record<Hindrance['at'], string>> = {
  least: 'is at its least',
  most: 'is at its most',
  fixed: 'is fixed',
  jump: 'pass the target over in one step',
};

export const steerCommand: Command = {
  async run(args, io) {
    const asked = understood(args, {}, 1);
    if ('remedy' in asked) return refuse(io, asked, 'steer');
    const read = jobFrom(asked.operands[0]!, io);
    if (!read) return REFUSED;
    const { job } = read;
    if (!job.target) return refuse(io, words.steer);
    const plan = planOf(job);
    const found = steer(plan, job, job.target, (done, of) => {
      if (io.isTerminal) process.stderr.write(done < of ? `\rplan ${done} of at most ${of}` : '\r\u001b[K');
    });
    if (io.isTerminal) process.stderr.write('\r\u001b[K');
    const { units } = job;
    const value = (each: number) =>
      found.aim === 'weight' ? printWeight(each, units) : `${printLength(each, units)} from the nose`;
    io.out(`Finished ${found.aim}: ${value(found.asked)} asked, ${value(found.reached)} reached.`);
    for (const wall of WALLS) {
      const [from, to] = [job.chambers[wall], found.job.chambers[wall]];
      if (from !== to)
        io.out(`  chambers.${wall}: ${printExactly(to, units)}, instead of ${printExactly(from, units)}`);
    }
    if (found.job.fill.name !== job.fill.name) io.out(`  fill: ${found.job.fill.name}, instead of ${job.fill.name}`);
    const cloth = found.job.glass?.deck[0] ?? found.job.glass?.bottom[0];
    if (job.target.cloths && cloth !== undefined)
      io.out(`  glass.deck, glass.bottom: ${printArealWeight(cloth, units)} in every layer`);
    const isWell = judged(planOf(found.job), io);
    if (found.met) return isWell ? WELL : TO_ACT_ON;
    for (const { lever, at } of found.hinders) io.err(`  in the way: ${LEVER[lever]} ${AT[at]}`);
    return TO_ACT_ON;
  },
};

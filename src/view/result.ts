import { publishedFin } from '../fin/published.js';
import type { Plan } from '../plan.js';
import { publishedStock } from '../stock/published.js';
import type { Stock } from '../stock/stockOf.js';
import { sayFinding } from '../finding/say.js';
import { HEEL, underHeelOf } from '../weigh/underHeel.js';
import { asPlanned, verdictOf, type Verdict } from '../verdict/verdict.js';
import { boardInFoam } from './boardInFoam.js';

/** Raised when a name or meaning in `Result` changes, not when one is added. */
export const RESULT_VERSION = 2;

/**
 * The plan as published figures: plain data, millimetres, kilograms, litres and square metres, for `plan --json`, for
 * other programs and for anyone who wants to prove the plan wrong. Frames as in `Face` and `Board`.
 *
 * @param verdict by the plan's own figures where it is left out
 */
export function resultOf(plan: Plan, verdict = verdictOf(plan, asPlanned(plan))) {
  const { board, layup, job } = plan;
  return {
    chamberwright: RESULT_VERSION,
    job: job.name,
    board: {
      length: board.length,
      width: board.width,
      thickness: board.thickness,
      volume: board.volume,
      area: board.area,
    },
    asked: plan.asked,
    pieces: layup.pieces.map((piece) => ({
      id: piece.id,
      side: piece.side,
      number: piece.number,
      members: piece.members.map((m) => m.id),
    })),
    members: layup.members.map((m) => ({
      id: m.id,
      side: m.side,
      number: m.number,
      kind: m.kind,
      material: m.material.name,
      routing: m.routing,
    })),
    joints: layup.joints,
    rows: layup.rows.map(({ id, side, number, piece, face, through, members, end, parity }) => ({
      id,
      side,
      number,
      piece,
      face: {
        id: face.id,
        on: face.on,
        joint: face.joint,
        origin: face.origin,
        along: face.along,
        inward: face.inward,
      },
      through: through?.id ?? null,
      members: members.map((m) => m.id),
      end,
      parity,
    })),
    chambers: plan.chambers.map(({ id, row, place, profile, contour, depth, wall, at, volume }) => ({
      id,
      row,
      place,
      profile,
      contour,
      depth,
      wall,
      at,
      volume,
    })),
    webs: plan.webs,
    dots: plan.glue.dots,
    smears: plan.glue.smears,
    glueLosses: plan.glue.losses,
    routing: plan.routing,
    blocks: plan.blocks,
    weights: plan.weights,
    ...(plan.stock && { stock: stockResult(plan.stock) }),
    fins: plan.fins.map(publishedFin),
    notes: plan.notes,
    doubts: plan.doubts.map(({ where, what, remedy }) => ({ ...where, what, instead: remedy })),
    verdict: {
      stands: verdict.stands,
      refusals: verdict.refusals.map(sayFinding),
      doubts: verdict.doubts.map(sayFinding),
    },
  };
}

/** The same with what is only reckoned where it is asked for: how the deck bears a heel over each chamber. */
export function publishedOf(plan: Plan, verdict?: Verdict) {
  const skins = underHeelOf(plan.layup, plan.chambers, plan.job);
  return { ...resultOf(plan, verdict), underHeel: { ...HEEL, skins } };
}

/**
 * A millionth of a millimetre, of a kilogram, of a litre is the last figure: finer, what one engine computes differs
 * from what another does.
 */
const STEPS = 1e6;

/** The published figures as text, the same on every engine. */
export function resultText(result: ReturnType<typeof publishedOf>): string {
  const rounded = (_: string, value: unknown) =>
    typeof value === 'number' ? Math.round(value * STEPS) / STEPS + 0 : value;
  return JSON.stringify(result, rounded, 1);
}

export type Result = ReturnType<typeof resultOf>;

function stockResult(stock: Stock) {
  const { blank, ...rest } = publishedStock(stock);
  return { ...rest, blank: blank && { ...blank, lying: boardInFoam(stock.blank!) } };
}

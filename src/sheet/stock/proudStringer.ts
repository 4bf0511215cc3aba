import type { LaidMember } from '../../layup/layup.js';
import type { Plan } from '../../plan.js';
import { edgeInGlueUp } from '../../view/memberInGlueUp.js';

/** Between places along a stringer that are looked at, mm. */
const STEP = 20;

/**
 * By how much a stringer stands proud of the foam beside it, the lower of both sides, at most between two places, mm;
 * below 0 where the foam is higher all along, undefined where there is none beside it.
 */
export type Proud = (side: 'deck' | 'bottom', from: number, to: number) => number | undefined;

export function proudOf(plan: Plan, stringer: LaidMember): Proud {
  const { members } = plan.layup;
  const joints = [stringer.left, stringer.right].flatMap((joint) => {
    const beside = members.find((m) => m !== stringer && joint && (m.left === joint || m.right === joint));
    const [own, foam] = [stringer, beside].map((member) => member && edgeInGlueUp(plan, member, joint!));
    return beside?.kind === 'strip' && own && foam ? [{ own, foam }] : [];
  });
  return (side, from, to) => {
    let most: number | undefined;
    for (const { own, foam } of joints) {
      for (let i = 0; i <= Math.ceil((to - from) / STEP); i++) {
        const x = Math.min(to, from + i * STEP);
        const [wood, beside] = [own.heightsAt(x), foam.heightsAt(x)];
        if (!wood || !beside) continue;
        const proud = side === 'deck' ? wood.deck - beside.deck : beside.bottom - wood.bottom;
        most = Math.max(most ?? -Infinity, proud);
      }
    }
    return most;
  };
}

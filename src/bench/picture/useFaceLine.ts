import { useMemo } from 'preact/hooks';
import type { Face } from '../../layup/layup.js';
import { faceLineAt } from '../../view/faceLine.js';
import type { ShownBoard } from '../plan/answer.js';
import { pathOf } from './scale.js';

/**
 * The finished line of a face as an SVG path, `z` up, with its least and greatest height, mm; nothing where the joint
 * lies beside the board. Drawn anew where board or face have changed, not with every plan.
 */
export function useFaceLine(board: ShownBoard, face: Face | undefined) {
  const place = face && [...face.origin, ...face.along, ...face.inward].join();
  return useMemo(() => {
    const loops = face ? faceLineAt(board, face).loops : [];
    if (loops.length === 0) return undefined;
    const heights = loops.flat().map(([, z]) => z);
    return {
      path: loops.map((loop) => pathOf(loop, true)).join(''),
      low: Math.min(...heights),
      high: Math.max(...heights),
    };
  }, [board, place]);
}

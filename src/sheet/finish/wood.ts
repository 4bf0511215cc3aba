import type { Plan } from '../../plan.js';

/** Whether wood comes to the surface of the board. */
export const hasWood = ({ layup }: Plan): boolean => layup.members.some(({ kind }) => kind === 'stringer');

/** What lies lower than asked by no more than this is as asked, mm. */
const MET = 1e-3;

/** Whether less stands over a place than is asked, mm. */
export function isShort(over: number, asked: number): boolean {
  return over < asked - MET;
}

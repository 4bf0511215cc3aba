/** A time as it is read in the shop: the hour, with the day where it was not today. */
export function sayClock(ms: number, now = Date.now()): string {
  const time = new Date(ms);
  const hour = time.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });
  if (time.toDateString() === new Date(now).toDateString()) return hour;
  return `${time.toLocaleDateString([], { day: 'numeric', month: 'short' })} ${hour}`;
}

/** What is left of a time, `12:05`; a minus in front once it is over. */
export function sayCountdown(ms: number): string {
  const seconds = Math.abs(Math.trunc(ms / 1000));
  return `${ms < 0 ? '−' : ''}${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
}

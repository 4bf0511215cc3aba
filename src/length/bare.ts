/** A written length without its unit, which stands once for several: `3/16` from `3/16 in`. */
export const bare = (written: string): string => written.replace(/ (mm|in)$/, '');

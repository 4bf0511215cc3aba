/** Keeps what was made of something as long as that lives, by a key; of each thing the latest `most` only. */
export class Kept<Owner extends object, Made> {
  private readonly kept = new WeakMap<Owner, Map<string, Made>>();

  constructor(private readonly most: number) {}

  of(owner: Owner, key: string, make: () => Made): Made {
    const all = this.kept.get(owner) ?? new Map<string, Made>();
    this.kept.set(owner, all);
    const made = all.get(key) ?? make();
    // Put last again, so that the first is the one not asked for the longest.
    all.delete(key);
    all.set(key, made);
    if (all.size > this.most) all.delete(all.keys().next().value!);
    return made;
  }
}

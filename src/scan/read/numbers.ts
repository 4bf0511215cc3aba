/**
 * Numbers and words of a text that is too long to be made into strings: asked for one after the other, straight from
 * its bytes (ASCII).
 */
export class Scanner {
  /** Where the word that was found last begins and ends. */
  start = 0;
  end = 0;
  line = 1;

  constructor(
    readonly bytes: Uint8Array,
    from = 0,
  ) {
    this.end = from;
  }

  /** Goes to the next word; false at the end of the text. */
  next(): boolean {
    const { bytes } = this;
    let at = this.end;
    while (at < bytes.length && bytes[at]! <= SPACE) if (bytes[at++] === NEWLINE) this.line++;
    this.start = at;
    while (at < bytes.length && bytes[at]! > SPACE) at++;
    this.end = at;
    return at > this.start;
  }

  /** The same within this line: false at its end. */
  nextOnLine(): boolean {
    const { bytes } = this;
    let at = this.end;
    while (at < bytes.length && bytes[at]! <= SPACE && bytes[at] !== NEWLINE) at++;
    if (at === bytes.length || bytes[at] === NEWLINE) {
      this.end = at;
      return false;
    }
    this.start = at;
    while (at < bytes.length && bytes[at]! > SPACE) at++;
    this.end = at;
    return true;
  }

  /** Goes on to the next line; false where there is none. */
  skipLine(): boolean {
    const at = this.bytes.indexOf(NEWLINE, this.end);
    if (at < 0) return false;
    this.end = at + 1;
    this.line++;
    return true;
  }

  /** Whether the word is this one, in small letters or capitals. */
  is(word: string): boolean {
    if (this.end - this.start !== word.length) return false;
    for (let i = 0; i < word.length; i++) if ((this.bytes[this.start + i]! | 32) !== word.charCodeAt(i)) return false;
    return true;
  }

  text(): string {
    return String.fromCharCode(...this.bytes.subarray(this.start, Math.min(this.end, this.start + 40)));
  }

  /** The word as a number; not-a-number where it is none. */
  number(): number {
    const { bytes, end } = this;
    let at = this.start;
    const isNegative = bytes[at] === MINUS;
    if (isNegative || bytes[at] === PLUS) at++;
    let digits = 0;
    let whole = 0;
    let scale = 0;
    let seenPoint = false;
    for (; at < end; at++) {
      const code = bytes[at]!;
      if (code >= ZERO && code <= ZERO + 9) {
        whole = whole * 10 + (code - ZERO);
        digits++;
        if (seenPoint) scale--;
      } else if (code === POINT && !seenPoint) seenPoint = true;
      else break;
    }
    // A mantissa of up to 15 digits and a power of ten up to 22 are exact, and so is, but for one rounding, the result.
    if (digits === 0 || digits > 15) return this.slowly();
    if (at < end) {
      if ((bytes[at]! | 32) !== LETTER_E) return this.slowly();
      const power = Number(String.fromCharCode(...bytes.subarray(at + 1, end)));
      if (!Number.isInteger(power) || at + 1 === end) return NaN;
      scale += power;
    }
    if (scale < -22 || scale > 22) return this.slowly();
    const value = scale < 0 ? whole / POWERS[-scale]! : whole * POWERS[scale]!;
    return isNegative ? -value : value;
  }

  private slowly(): number {
    const word = String.fromCharCode(...this.bytes.subarray(this.start, this.end));
    return /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(word) ? Number(word) : NaN;
  }
}

const SPACE = 32;
const NEWLINE = 10;
const MINUS = 45;
const PLUS = 43;
const POINT = 46;
const ZERO = 48;
const LETTER_E = 101;
const POWERS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

/** Numbers one after the other, in room that grows with them. */
export class Growing<T extends Float64Array<ArrayBuffer> | Uint32Array<ArrayBuffer>> {
  length = 0;

  constructor(
    private readonly make: (length: number) => T,
    private room: T = make(3072),
  ) {}

  push(value: number): void {
    if (this.length === this.room.length) {
      const wider = this.make(2 * this.length);
      wider.set(this.room);
      this.room = wider;
    }
    this.room[this.length++] = value;
  }

  /** All of them; not to be added to any more. */
  all(): T {
    return this.room.subarray(0, this.length) as T;
  }
}

// Reads numbers of JSON out of bytes, most of them without making a text first. Refuses what JSON refuses.

const [zero, nine, minus, plus, point, small, capital] = [...'09-+.eE'].map((sign) =>
  sign.charCodeAt(0),
) as [number, number, number, number, number, number, number];

/** Integers of so many digits, and the powers of ten up to them, are exact as doubles; their quotient is rounded once. */
const exactDigits = 15;
const powersOfTen = Array.from({ length: exactDigits + 1 }, (_, n) => 10 ** n);

export class ByteNumber {
  /** Behind the number that was read last. */
  end = 0;

  /** The number that begins at `from`, as `JSON.parse` gives it; NaN where there is none. May read past a line's end. */
  read(bytes: Buffer, from: number): number {
    const first = bytes[from] === minus ? from + 1 : from;
    let at = first;
    let digits = 0;
    for (; isDigit(bytes[at]); at += 1) digits = 10 * digits + digitOf(bytes[at]);
    const wholes = at - first;
    if (wholes === 0 || (wholes > 1 && bytes[first] === zero)) return Number.NaN;
    let decimals = 0;
    if (bytes[at] === point) {
      for (at += 1; isDigit(bytes[at]); at += 1) digits = 10 * digits + digitOf(bytes[at]);
      decimals = at - first - wholes - 1;
      if (decimals === 0) return Number.NaN;
    }
    this.end = at;
    if (bytes[at] === small || bytes[at] === capital) return this.#withExponent(bytes, from);
    if (wholes + decimals > exactDigits) return Number(bytes.toString('latin1', from, at));
    const size = decimals === 0 ? digits : digits / (powersOfTen[decimals] as number);
    return first === from ? size : -size;
  }

  #withExponent(bytes: Buffer, from: number): number {
    let at = this.end + 1;
    if (bytes[at] === minus || bytes[at] === plus) at += 1;
    while (isDigit(bytes[at])) at += 1;
    this.end = at;
    return Number(bytes.toString('latin1', from, at));
  }
}

const isDigit = (byte: number | undefined): boolean =>
  byte !== undefined && byte >= zero && byte <= nine;

const digitOf = (byte: number | undefined): number => (byte as number) - zero;

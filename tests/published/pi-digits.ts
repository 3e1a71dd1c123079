// Promises the first decimal digits of pi, 3 first, for the NIST StRD set PiDigits, which consists of them.
// In whole numbers, by Machin's formula pi/4 = 4 arctan(1/5) - arctan(1/239), with ten guard digits.

function arctanOfInverse(x: bigint, one: bigint): bigint {
  let power = one / x;
  let sum = power;
  for (let odd = 3n, sign = -1n; power !== 0n; odd += 2n, sign = -sign) {
    power /= x * x;
    sum += (sign * power) / odd;
  }
  return sum;
}

export function piDigits(count: number): number[] {
  const one = 10n ** BigInt(count + 10);
  const pi = 4n * (4n * arctanOfInverse(5n, one) - arctanOfInverse(239n, one));
  return [...pi.toString().slice(0, count)].map(Number);
}

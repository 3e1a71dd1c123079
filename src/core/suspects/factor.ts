// Tables over discrete variables, and the sum of a product of them by eliminating one variable after another
// (sum-product, as in Koller and Friedman, Probabilistic Graphical Models, ch. 9; from memory). Exact; the cost
// grows with the widest table on the way, see `widestTable`.

export interface Factor {
  /** The variables, the last one changing fastest in `values`. */
  readonly scope: readonly number[];
  /** Number of states of each variable of the scope. */
  readonly states: readonly number[];
  /** Scaled so that the largest is 1; all 0 where nothing is possible. */
  readonly values: Float64Array;
  /** Natural logarithm of the scale taken out. */
  readonly logScale: number;
}

/** @throws RangeError when the number of values is not the product of the states. */
export const factorOf = (
  scope: readonly number[],
  states: readonly number[],
  values: Float64Array,
): Factor => {
  if (values.length !== sizeOf(states))
    throw new RangeError(`${values.length} values for ${sizeOf(states)} states`);
  return scaled({ scope, states, values, logScale: 0 });
};

/**
 * The product of the factors with every variable outside `keep` summed out, over `keep` in its order.
 * @throws RangeError when a variable to keep is in no factor.
 */
export const eliminate = (factors: readonly Factor[], keep: readonly number[]): Factor => {
  let left = factors;
  for (;;) {
    const next = cheapest(
      left.map(({ scope }) => scope),
      keep,
      statesIn(left),
    );
    if (next === null) break;
    const touched = left.filter(({ scope }) => scope.includes(next.variable));
    const rest = left.filter(({ scope }) => !scope.includes(next.variable));
    const scope = [...next.clique.filter((variable) => variable !== next.variable), next.variable];
    left = [...rest, sumOutLast(multiply(touched, scope))];
  }
  return multiply(left, keep);
};

/** The largest table that elimination of all variables meets, and its variables. */
export const widestTable = (
  scopes: readonly (readonly number[])[],
  statesOf: (variable: number) => number,
): { readonly scope: readonly number[]; readonly entries: number } => {
  let left = scopes;
  let widest: { scope: readonly number[]; entries: number } = { scope: [], entries: 1 };
  for (;;) {
    const next = cheapest(left, [], statesOf);
    if (next === null) return widest;
    const { variable, clique, entries } = next;
    if (entries > widest.entries) widest = { scope: clique, entries };
    left = [
      ...left.filter((scope) => !scope.includes(variable)),
      clique.filter((other) => other !== variable),
    ];
  }
};

interface Step {
  readonly variable: number;
  /** All variables of the factors that hold it. */
  readonly clique: readonly number[];
  readonly entries: number;
}

/** The variable whose elimination needs the smallest table. */
const cheapest = (
  scopes: readonly (readonly number[])[],
  keep: readonly number[],
  statesOf: (variable: number) => number,
): Step | null => {
  let best: Step | null = null;
  for (const variable of new Set(scopes.flat())) {
    if (keep.includes(variable)) continue;
    const clique = [...new Set(scopes.filter((scope) => scope.includes(variable)).flat())];
    const entries = clique.reduce((size, member) => size * statesOf(member), 1);
    if (best === null || entries < best.entries) best = { variable, clique, entries };
  }
  return best;
};

const statesIn = (factors: readonly Factor[]): ((variable: number) => number) => {
  const known = new Map<number, number>();
  for (const { scope, states } of factors)
    scope.forEach((variable, place) => {
      known.set(variable, states[place] as number);
    });
  return (variable) => {
    const states = known.get(variable);
    if (states === undefined) throw new RangeError(`variable ${variable} is in no factor`);
    return states;
  };
};

const multiply = (factors: readonly Factor[], scope: readonly number[]): Factor => {
  const statesOf = statesIn(factors);
  const states = scope.map(statesOf);
  const values = new Float64Array(sizeOf(states)).fill(1);
  let logScale = 0;
  for (const factor of factors) {
    logScale += factor.logScale;
    multiplyInto(values, scope, states, factor);
  }
  return scaled({ scope, states, values, logScale });
};

const multiplyInto = (
  values: Float64Array,
  scope: readonly number[],
  states: readonly number[],
  factor: Factor,
): void => {
  const strides = stridesOf(factor, scope);
  const digits = new Int32Array(scope.length);
  let at = 0;
  for (let i = 0; i < values.length; i += 1) {
    values[i] = (values[i] as number) * (factor.values[at] as number);
    for (let place = scope.length - 1; place >= 0; place -= 1) {
      const digit = (digits[place] as number) + 1;
      const stride = strides[place] as number;
      if (digit < (states[place] as number)) {
        digits[place] = digit;
        at += stride;
        break;
      }
      digits[place] = 0;
      at -= stride * (digit - 1);
    }
  }
};

/** How far one step of each variable of `scope` goes in the factor's values; 0 where it has none. */
const stridesOf = (factor: Factor, scope: readonly number[]): number[] => {
  const own = new Map<number, number>();
  let stride = 1;
  for (let place = factor.scope.length - 1; place >= 0; place -= 1) {
    own.set(factor.scope[place] as number, stride);
    stride *= factor.states[place] as number;
  }
  return scope.map((variable) => own.get(variable) ?? 0);
};

const sumOutLast = ({ scope, states, values, logScale }: Factor): Factor => {
  const run = states.at(-1) ?? 1;
  const sums = new Float64Array(values.length / run);
  for (let i = 0; i < values.length; i += 1) {
    const to = Math.floor(i / run);
    sums[to] = (sums[to] as number) + (values[i] as number);
  }
  return scaled({ scope: scope.slice(0, -1), states: states.slice(0, -1), values: sums, logScale });
};

const scaled = (factor: Factor): Factor => {
  const largest = factor.values.reduce((most, value) => Math.max(most, value), 0);
  if (largest === 0 || largest === 1) return factor;
  return {
    ...factor,
    values: factor.values.map((value) => value / largest),
    logScale: factor.logScale + Math.log(largest),
  };
};

const sizeOf = (states: readonly number[]): number =>
  states.reduce((size, count) => size * count, 1);

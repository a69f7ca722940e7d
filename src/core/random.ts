/**
 * Seeded chance: the same numbers on every machine and in every version of the language, because only integer steps,
 * `+ - * /` and square root are used (IEEE 754 fixes their results; it does not fix those of `log`, `exp` or `sin`).
 */

const mask64 = 0xffffffffffffffffn;

/**
 * 64-bit FNV-1a hash of the UTF-8 bytes of a text.
 * Source: Fowler, Noll, Vo, Eastlake, "The FNV Non-Cryptographic Hash Algorithm" (IETF RFC 9923).
 */
export function hashText(text: string): bigint {
  let hash = 0xcbf29ce484222325n;
  for (const byte of new TextEncoder().encode(text)) {
    hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) & mask64;
  }
  return hash;
}

/**
 * SplitMix64: turns one 64-bit seed into a stream of 64-bit words, used to fill the state of the generator below.
 * Source: Steele, Lea, Flood 2014, "Fast splittable pseudorandom number generators"; Vigna's public-domain splitmix64.c.
 */
export function splitMix64(seed: bigint): () => bigint {
  let state = seed & mask64;
  return () => {
    state = (state + 0x9e3779b97f4a7c15n) & mask64;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & mask64;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & mask64;
    return z ^ (z >> 31n);
  };
}

/** A stream of chance. Each call moves it on; two streams from one seed run alike. */
export interface Random {
  /** 32 unsigned bits. */
  bits(): number;
  /** In [0, 1), every multiple of 2^-32 equally likely. */
  uniform(): number;
  /** Fills an array from the standard normal distribution, which here reaches about 6.2 either side. */
  fillNormal(into: Float64Array): void;
}

/**
 * xoshiro128** 1.1 from four 32-bit words, not all zero.
 * Source: Blackman and Vigna 2018, "Scrambled linear pseudorandom number generators"; public-domain xoshiro128starstar.c.
 */
export function randomFromState(words: readonly [number, number, number, number]): Random {
  const state = Int32Array.from(words);
  if (state.every(word => word === 0))
    throw new RangeError('the state of the generator must not be all zero');
  const one = new Int32Array(1);
  // Signed words: the engine keeps those as whole numbers, where unsigned ones become floating-point.
  function fillBits(into: Int32Array): void {
    // One by one: taking an array apart costs more than the step itself, and most callers draw one number.
    let s0 = state[0]!;
    let s1 = state[1]!;
    let s2 = state[2]!;
    let s3 = state[3]!;
    for (let i = 0; i < into.length; i += 1) {
      const scaled = Math.imul(s1, 5);
      into[i] = Math.imul((scaled << 7) | (scaled >>> 25), 9);
      const shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
    }
    state[0] = s0;
    state[1] = s1;
    state[2] = s2;
    state[3] = s3;
  }
  function bits(): number {
    fillBits(one);
    return (one[0] as number) >>> 0;
  }
  let drawn = one;
  function fillNormal(into: Float64Array): void {
    if (drawn.length !== into.length) drawn = new Int32Array(into.length);
    fillBits(drawn);
    for (let i = 0; i < into.length; i += 1) into[i] = normalFromBits(drawn[i] as number);
  }
  return { bits, uniform: () => bits() / 4294967296, fillNormal };
}

/** A stream whose seed is a text: equal texts give equal streams. */
export function randomFromText(text: string): Random {
  const next = splitMix64(hashText(text));
  const [low, high] = [next(), next()];
  const half = (word: bigint, shift: bigint) => Number((word >> shift) & 0xffffffffn) | 0;
  return randomFromState([half(low, 0n), half(low, 32n), half(high, 0n), half(high, 32n)]);
}

/** log 2 to double precision. */
const LN2 = Math.LN2;

/** 1/33, 1/31, ... 1/3, 1: enough terms of the series below for double precision on [1, 2). */
const oddReciprocals = Float64Array.from({ length: 17 }, (_, i) => 1 / (33 - 2 * i));

/** Natural logarithm of a positive number, by scaling to [1, 2) and the series of the inverse hyperbolic tangent. */
function naturalLog(x: number): number {
  let twos = 0;
  let scaled = x;
  while (scaled < 1) {
    scaled *= 2;
    twos -= 1;
  }
  while (scaled >= 2) {
    scaled /= 2;
    twos += 1;
  }
  const t = (scaled - 1) / (scaled + 1);
  const square = t * t;
  let sum = 0;
  for (const reciprocal of oddReciprocals) sum = sum * square + reciprocal;
  return twos * LN2 + 2 * t * sum;
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let i = coefficients.length - 1; i >= 0; i -= 1) sum = sum * x + (coefficients[i] ?? 0);
  return sum;
}

/** Coefficients of the three rational pieces of algorithm AS 241 (PPND16), lowest power first. */
const center = {
  above: [
    3.3871328727963665, 133.14166789178438, 1971.5909503065513, 13731.69376550946, 45921.95393154987,
    67265.7709270087, 33430.57558358813, 2509.0809287301227,
  ],
  below: [
    1, 42.31333070160091, 687.1870074920579, 5394.196021424751, 21213.794301586597, 39307.89580009271,
    28729.085735721943, 5226.495278852854,
  ],
};
const shoulder = {
  above: [
    1.4234371107496835, 4.630337846156546, 5.769497221460691, 3.6478483247632045, 1.2704582524523684,
    0.2417807251774506, 0.022723844989269184, 0.0007745450142783414,
  ],
  below: [
    1, 2.053191626637759, 1.6763848301838038, 0.6897673349851, 0.14810397642748008, 0.015198666563616457,
    0.0005475938084995345, 1.0507500716444169e-9,
  ],
};
const tail = {
  above: [
    6.657904643501103, 5.463784911164114, 1.7848265399172913, 0.29656057182850487, 0.026532189526576124,
    0.0012426609473880784, 2.7115555687434876e-5, 2.0103343992922881e-7,
  ],
  below: [
    1, 0.599832206555888, 0.1369298809227358, 0.014875361290850615, 0.0007868691311456133,
    1.8463183175100548e-5, 1.421511758316446e-7, 2.0442631033899397e-15,
  ],
};

/**
 * The standard normal value below which a share `p` (0 < p < 1) lies, to about 16 digits.
 * Source: Wichura 1988, algorithm AS 241, Applied Statistics 37:477-484.
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    return (q * polynomial(center.above, r)) / polynomial(center.below, r);
  }
  const r = Math.sqrt(-naturalLog(q < 0 ? p : 1 - p));
  const piece = r <= 5 ? shoulder : tail;
  const from = r <= 5 ? r - 1.6 : r - 5;
  const size = polynomial(piece.above, from) / polynomial(piece.below, from);
  return q < 0 ? -size : size;
}

/** Quantiles at the edges of 1,024 equally likely cells: straight lines between them stand in for the exact curve. */
const CELL_BITS = 10;
const CELLS = 2 ** CELL_BITS;
/** Cells at each end where the curve bends too much for a straight line; there the exact quantile is used. */
const EXACT_CELLS = 4;
const INSIDE_BITS = 32 - CELL_BITS;
const INSIDE_MASK = 2 ** INSIDE_BITS - 1;
const cellStart = new Float64Array(CELLS);
const cellSlope = new Float64Array(CELLS);
for (let cell = EXACT_CELLS; cell < CELLS - EXACT_CELLS; cell += 1) {
  const start = normalQuantile(cell / CELLS);
  cellStart[cell] = start;
  cellSlope[cell] = (normalQuantile((cell + 1) / CELLS) - start) / 2 ** INSIDE_BITS;
}

function normalFromBits(bits: number): number {
  const cell = bits >>> INSIDE_BITS;
  if (cell < EXACT_CELLS || cell >= CELLS - EXACT_CELLS)
    return normalQuantile(((bits >>> 0) + 0.5) / 2 ** 32);
  return (cellStart[cell] as number) + (cellSlope[cell] as number) * (bits & INSIDE_MASK);
}

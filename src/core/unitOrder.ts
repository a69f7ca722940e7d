/** The order of measures that are given in both systems, for readers who think in the other one. */

const number = String.raw`[-\u2212]?\d[\d,.]*`;
/** `30`, `33 to 40`, `25 and 20`, `1.5 × 1.3`, `1.5 by 1.3`. */
const figures = `${number}(?:[ \\u00a0](?:to|and|or|by|×)[ \\u00a0]${number})*`;
const space = '([ \\u00a0])';
const both = new RegExp(
  `(${figures})${space}((?:degrees |degree-days )?F|in|ft|lb|oz|mile|miles|gallon|gallons|gal)${space}\\((${figures})${space}((?:degrees |degree-days )?C|cm|mm|m|kg|km|g|L)\\)`,
  'g',
);

/** `23 F (-5 C)` becomes `-5 C (23 F)`, and so on for lengths, weights, distances and volumes. All other words stay as they are. */
export function metricFirst(text: string): string {
  return text.replace(
    both,
    (_, customary, a, customaryUnit, b, metric, c, metricUnit) =>
      `${metric}${c}${metricUnit}${b}(${customary}${a}${customaryUnit})`,
  );
}

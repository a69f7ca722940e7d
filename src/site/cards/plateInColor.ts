/** A plate as a drawing that needs no stylesheet: the rules of the site's own sheets, with their variables and mixed colors worked out. */

/** `#rrggbb` or `#rgb` as three parts, 0 to 255. */
function partsOf(color: string): number[] {
  const hex = color.slice(1);
  const pairs = hex.length === 3 ? [...hex].map(digit => digit + digit) : (hex.match(/../g) ?? []);
  return pairs.map(pair => Number.parseInt(pair, 16));
}

/** Two colors in proportion, in sRGB: close enough to the mix of a browser for a picture of a link. */
function mixed(color: string, other: string, percent: number): string {
  const [a, b] = [partsOf(color), partsOf(other)];
  const parts = a.map((part, at) => Math.round(part + ((b[at] as number) - part) * (percent / 100)));
  return `#${parts.map(part => part.toString(16).padStart(2, '0')).join('')}`;
}

/** Without what holds only in the dark, on paper or on other screens. */
const atRules = /@media[^{]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}/g;

/**
 * The style of the plates for a fruit of some color classes. `sheets` are the stylesheets of plates and fruit, `ink` the color of the bar.
 * Throws where a variable has no value: a drawing with holes in it would be black.
 */
export function plateStyle(sheets: readonly string[], colors: string, ink: string): string {
  const rules = sheets
    .join('\n')
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(atRules, '');
  const values = new Map([['--ink', ink]]);
  const classes = new Set(['plate', ...colors.split(' ')]);
  for (const [, selector, body] of rules.matchAll(/([^{}]+)\{([^{}]*)\}/g)) {
    const names = (selector as string).split(',').map(each => each.trim());
    if (!names.some(name => /^\.[a-z-]+$/.test(name) && classes.has(name.slice(1)))) continue;
    for (const [, name, value] of (body as string).matchAll(/(--[a-z]+):\s*([^;]+);/g))
      values.set(name as string, (value as string).trim());
  }
  const colorNamed = (name: string): string => {
    const value = values.get(name);
    if (value === undefined) throw new Error(`no color for ${name} of a plate`);
    return value.replace(/var\((--[a-z]+)\)/g, (_, other) => colorNamed(other));
  };
  return rules
    .replace(/--[a-z]+:[^;]+;/g, '')
    .replace(/var\((--(?:skin|flesh|blush|rind|leaf|wood|line|edge|ink))\)/g, (_, name) => colorNamed(name))
    .replace(
      /color-mix\(in oklab, (#[0-9a-f]{3,6}), (#[0-9a-f]{3,6}) (\d+)%\)/g,
      (_, color, other, percent) => mixed(color, other, Number(percent)),
    )
    .match(/\.plate [^{}]+\{[^{}]*\}/g)!
    .join('\n')
    .replace(/\.plate :is\(([^)]*)\)/g, '$1');
}

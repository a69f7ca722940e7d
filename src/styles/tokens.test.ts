import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('./tokens.css', import.meta.url), 'utf8');
const [light, dark] = css.split('prefers-color-scheme: dark') as [string, string];

function color(block: string, token: string): string {
  const found = new RegExp(`--${token}: (#[0-9a-f]{6})`).exec(block)?.[1];
  if (!found) throw new Error(`no --${token}`);
  return found;
}

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function luminance(hex: string): number {
  const channels = [1, 3, 5].map(at => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  const [red, green, blue] = channels.map(value =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  ) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(a: string, b: string): number {
  const [high, low] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

describe('the inks', () => {
  it('are measured as WCAG 2.2 does: 21 for black on white, 4.48 for #777 on white', () => {
    expect(contrast('#000000', '#ffffff')).toBe(21);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  it.each([
    ['light', light],
    ['dark', dark],
  ])('stand out from %s paper by 7 to 1 (WCAG 2.2, 1.4.6)', (_, block) => {
    for (const ink of ['ink', 'ink-soft', 'spot']) {
      expect(contrast(color(block, ink), color(block, 'paper')), ink).toBeGreaterThanOrEqual(7);
    }
  });
});

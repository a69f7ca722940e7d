import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import logDestination from './generatorLog.mjs';

let said: string;
beforeEach(() => {
  said = '';
  vi.spyOn(process.stderr, 'write').mockImplementation(text => {
    said += text;
    return true;
  });
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
  process.exitCode = undefined;
});

// As the bundler of the generator words it when the machine is busy.
const remark = {
  label: 'vite',
  level: 'warn',
  message:
    '\u001b[33m[PLUGIN_TIMINGS] Your build spent significant time in plugins. Here is a breakdown:\n  - astro:build (73%)\u001b[39m',
};

describe('the log of the generator', () => {
  it('keeps the remarks of the bundler from the grower, but not from whoever asks for traces', () => {
    logDestination().write(remark);
    expect(said).toBe('');
    vi.stubEnv('LEAFDROP_TRACE', '1');
    logDestination().write(remark);
    expect(said).toMatch(/^vite: \[PLUGIN_TIMINGS\]/);
  });

  it('tells warnings of the generator itself, and errors of anybody, which fail the build', () => {
    logDestination().write({ label: 'router', level: 'warn', message: 'two pages' });
    expect(process.exitCode).toBeUndefined();
    logDestination().write({ label: 'vite', level: 'error', message: 'no such module' });
    logDestination().write({ label: null, level: 'info', message: 'compiling' });
    expect(said).toBe('router: two pages\nvite: no such module\n');
    expect(process.exitCode).toBe(1);
  });
});

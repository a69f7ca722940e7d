import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isMap, isScalar, isSeq, parse, parseDocument } from 'yaml';
import { editYaml, type YamlChange } from './editYaml.ts';
import type { YamlPath } from './yamlPlaces.ts';

function edited(text: string, ...changes: YamlChange[]): string {
  const result = editYaml(text, changes);
  if ('refused' in result) throw new Error(result.refused);
  return result.text;
}

const set = (path: YamlPath, value: never | string | number | object, order: string[] = []): YamlChange =>
  ({ kind: 'set', path, value, order }) as YamlChange;

/** Lines of one text that the other does not have in the same order: a plain longest common subsequence. */
function changedLines(before: string, after: string): { taken: string[]; put: string[] } {
  const [a, b] = [before.split('\n'), after.split('\n')];
  let start = 0;
  while (start < a.length && start < b.length && a[start] === b[start]) start += 1;
  let end = 0;
  while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end)) end += 1;
  return { taken: a.slice(start, a.length - end), put: b.slice(start, b.length - end) };
}

const lots = `# Struck in March.

- lot: 26-cut-01   # the good bench
  cultivar: "wrenfoot"
  raised: 20
  pottings:
    - { date: 2026-05-02, container: "#1" } # potted up
  forms: [leafed-pot, dormant-pot]

# A late one.
- lot: 26-cut-02
  cultivar: inkpot
  raised: 7
  note: >-
    Two stems
    each.

# End of the list.
`;

describe('one value', () => {
  test('keeps its quotes, its comment and everything around it', () => {
    expect(changedLines(lots, edited(lots, set([0, 'cultivar'], 'two-ditches')))).toEqual({
      taken: ['  cultivar: "wrenfoot"'],
      put: ['  cultivar: "two-ditches"'],
    });
    expect(changedLines(lots, edited(lots, set([0, 'lot'], '26-cut-09'))).put).toEqual([
      '- lot: 26-cut-09   # the good bench',
    ]);
    expect(changedLines(lots, edited(lots, set([0, 'pottings', 0, 'container'], '#2'))).put).toEqual([
      '    - { date: 2026-05-02, container: "#2" } # potted up',
    ]);
  });

  test('gets quotes where YAML 1.2 would read it as something else', () => {
    expect(edited('a: x\n', set(['a'], '45'))).toBe('a: "45"\n');
    expect(edited('a: [x, y]\n', set(['a', 1], 'p, q'))).toBe('a: [x, "p, q"]\n');
    expect(edited('a: x\n', set(['a'], 'p, q'))).toBe('a: p, q\n');
    expect(edited("a: 'x'\n", set(['a'], "it's"))).toBe("a: 'it''s'\n");
    expect(edited('a: x\n', set(['a'], 'two: three # four'))).toBe('a: "two: three # four"\n');
  });

  test('of several lines gives way to one, and the blank line below it stays', () => {
    const { put, taken } = changedLines(lots, edited(lots, set([1, 'note'], 'One stem.')));
    expect(taken).toEqual(['  note: >-', '    Two stems', '    each.']);
    expect(put).toEqual(['  note: One stem.']);
  });

  test('is filled in where a key has none', () => {
    expect(edited('a: # none yet\nb: 2\n', set(['a'], 3))).toBe('a: 3 # none yet\nb: 2\n');
  });
});

describe('keys', () => {
  const order = ['lot', 'cultivar', 'raised', 'forms', 'hold', 'price', 'note'];

  test('are added in their usual order, behind the comment of the line before', () => {
    const text = edited(lots, set([0, 'hold'], { since: '2026-11-02', why: 'Rust on the leaves' }, order));
    expect(changedLines(lots, text).put).toEqual([
      '  hold:',
      '    since: 2026-11-02',
      '    why: Rust on the leaves',
    ]);
    expect(changedLines(lots, edited(lots, set([1, 'price'], { amount: '45', why: 'Tall' }, order)))).toEqual(
      {
        taken: [],
        put: ['  price:', '    amount: "45"', '    why: Tall'],
      },
    );
  });

  test('are taken out with their lines, and comments above stay', () => {
    const held = edited(lots, set([1, 'hold'], { since: '2026-11-02', why: 'Rust' }, order));
    expect(edited(held, { kind: 'remove', path: [1, 'hold'] })).toBe(lots);
    expect(edited('- a: 1\n  # of b\n  b: 2\n', { kind: 'remove', path: [0, 'a'] })).toBe(
      '- \n  # of b\n  b: 2\n',
    );
    expect(edited('a: { b: 1, c: 2 } # x\n', { kind: 'remove', path: ['a', 'c'] })).toBe('a: { b: 1 } # x\n');
  });

  test('are added between braces', () => {
    expect(edited('a: { b: 1 }\n', set(['a', 'c'], 'x, y'))).toBe('a: { b: 1, c: "x, y" }\n');
  });
});

describe('items', () => {
  test('are added below the last one, apart as the others are', () => {
    const text = edited(lots, {
      kind: 'append',
      path: [],
      value: { lot: '26-cut-03', forms: ['bare-root'] },
    });
    expect(changedLines(lots, text).put.filter(line => line !== '')).toEqual([
      '- lot: 26-cut-03',
      '  forms: [bare-root]',
    ]);
    expect(text.endsWith('# End of the list.\n')).toBe(true);
    expect(edited('a: [1, 2]\n', { kind: 'append', path: ['a'], value: 3 })).toBe('a: [1, 2, 3]\n');
    const potted = edited(lots, { kind: 'append', path: [0, 'pottings'], value: { date: '2026-07-01' } });
    expect(changedLines(lots, potted).put).toEqual(['    - { date: 2026-07-01 }']);
  });
});

describe('the bytes around', () => {
  test('line ends, a byte order mark and a missing last line end stay', () => {
    const dos = `\ufeff${lots.trimEnd().replaceAll('\n', '\r\n')}`;
    const result = edited(dos, set([0, 'hold'], { since: '2026-11-02', why: 'Rust' }));
    expect(result.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(result.startsWith('\ufeff#')).toBe(true);
    expect(result.endsWith('list.')).toBe(true);
  });

  test('nothing is written where more than the value would change', () => {
    expect(editYaml('a: &x 1\nb: *x\n', [set(['a'], 2)])).toHaveProperty('refused');
    expect(editYaml('a: 1\n', [{ kind: 'remove', path: ['b'] }])).toEqual({
      refused: 'there is no b in the file',
    });
    expect(editYaml('a: [1\n', [set(['a'], 2)])).toHaveProperty('refused');
    expect(editYaml('a: 1\n', [{ kind: 'remove', path: ['a'] }])).toHaveProperty('refused');
  });
});

/** Paths of all single values in a text. */
function valuePaths(text: string): YamlPath[] {
  const paths: YamlPath[] = [];
  const walk = (node: unknown, path: YamlPath): void => {
    if (isMap(node))
      for (const { key, value } of node.items)
        walk(value, [...path, String(isScalar(key) ? key.value : key)]);
    else if (isSeq(node)) for (const [index, item] of node.items.entries()) walk(item, [...path, index]);
    else if (isScalar(node) && node.value !== null) paths.push(path);
  };
  walk(parseDocument(text, { schema: 'core' }).contents, []);
  return paths;
}

const word = fc.oneof(
  fc.stringMatching(/^[a-z][a-z ,:#'"-]{0,30}$/),
  fc.constantFrom('45', 'yes', 'null', '~', '- x', '2026-11-02', '#1', '"', 'é ü', 'تين'),
);
const comment = fc.constantFrom('', '', ' # seen', '  # it said: "so"');
const scalar = fc.oneof(
  word.map(text => JSON.stringify(text)),
  word.map(text => `'${text.replaceAll("'", "''")}'`),
  fc.integer({ min: 0, max: 999 }).map(String),
  fc.stringMatching(/^[a-z]{1,9}( [a-z]{1,9})?$/).map(text => (text === 'null' ? 'nil' : text)),
);
/** A lot in any of the ways people lay one out. */
const lot = fc
  .record({
    id: fc.stringMatching(/^[a-z]{2,6}-[0-9]{2}$/),
    note: scalar,
    forms: fc.array(fc.constantFrom('leafed-pot', '"bare-root"'), { minLength: 1, maxLength: 2 }),
    flow: fc.boolean(),
    hold: fc.option(scalar),
    comments: fc.array(comment, { minLength: 4, maxLength: 4 }),
    deep: fc.constantFrom(0, 2),
    blank: fc.boolean(),
  })
  .map(({ id, note, forms, flow, hold, comments: [a, b, c, d], deep, blank }) => {
    const margin = ' '.repeat(2 + deep);
    const list = flow
      ? ` [${forms.join(', ')}]${c}`
      : `${c}\n${forms.map(each => `${margin}  - ${each}`).join('\n')}`;
    const held = hold === null ? '' : `\n${margin}hold: { why: ${hold} }${d}`;
    const dash = `-${' '.repeat(1 + deep)}`;
    return `${dash}lot: ${id}${a}\n${margin}note: ${note}${b}\n${margin}forms:${list}${held}\n${blank ? '\n# next\n' : ''}`;
  });
const yards = fc.record({
  text: fc.array(lot, { minLength: 1, maxLength: 5 }).map(each => `# lots\n${each.join('')}`),
  dos: fc.boolean(),
});

describe('any list of lots', () => {
  test('an edit of one value changes one line, and what is read is what was meant', () => {
    fc.assert(
      fc.property(yards, word, fc.nat(), ({ text, dos }, value, pick) => {
        const written = dos ? text.replaceAll('\n', '\r\n') : text;
        const paths = valuePaths(written);
        const path = paths[pick % paths.length]!;
        const result = edited(written, set(path, value));
        const { taken, put } = changedLines(written, result);
        expect(taken.length).toBeLessThanOrEqual(1);
        expect(put.length).toBe(taken.length);
        const wanted = parseDocument(written, { schema: 'core' });
        wanted.setIn(path, value);
        expect(parse(result, { schema: 'core' })).toEqual(wanted.toJS());
        expect(result.match(/# \w+/g)?.length).toBeGreaterThanOrEqual(
          (written.replace(/(["']).*?\1/g, '').match(/# (?:seen|lots|next)/g) ?? []).length,
        );
      }),
      { numRuns: 400 },
    );
  });

  test('a key that is added and taken out again leaves every byte as it was', () => {
    fc.assert(
      fc.property(yards, fc.nat(), ({ text, dos }, pick) => {
        const written = dos ? text.replaceAll('\n', '\r\n') : text;
        const count = parse(written).length as number;
        const path = [pick % count, 'price'];
        const added = edited(written, set(path, { amount: '45', why: 'Tall' }, ['lot', 'note', 'price']));
        expect(edited(added, { kind: 'remove', path })).toBe(written);
      }),
      { numRuns: 200 },
    );
  });
});

describe('the demonstration', () => {
  const folder = 'content/lots';
  test.each(readdirSync(folder))(
    'every value of %s can be put back as it is without a change of a byte',
    name => {
      const text = readFileSync(`${folder}/${name}`, 'utf8');
      const value = parse(text, { schema: 'core' });
      const at = (path: YamlPath) => path.reduce((each, step) => each[step], value);
      for (const path of valuePaths(text).slice(0, 60)) {
        const result = edited(text, set(path, at(path)));
        if (result === text) continue;
        // Texts over several lines come back as one line; all else must be the very same bytes.
        expect(changedLines(text, result).taken.length, String(path)).toBeGreaterThan(1);
      }
    },
  );
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadYard } from '../../../tests/yards/loadYard.ts';
import { assignCodes } from '../addresses/codes.ts';
import { ledgerOf, resolve } from '../addresses/ledger.ts';
import { withRows } from '../addresses/listText.ts';
import { recordAddress } from '../addresses/paths.ts';
import { publicationOf } from '../addresses/publication.ts';
import { day } from '../days.ts';
import { addressesFile, readAddresses } from '../reading/addressFile.ts';
import { readRecords } from '../reading/read.ts';
import { planRename, type RenameRequest, type YardTexts } from './rename.ts';
import { yardTexts } from './yardTexts.ts';

const today = day('2026-11-25');
const { files, photos } = loadYard('base');
const base = yardTexts(files);

function withFile(yard: YardTexts, path: string, text: string): YardTexts {
  return { ...yard, texts: new Map([...yard.texts, [path, text]]) };
}

function refusal(yard: YardTexts, request: RenameRequest): string {
  const plan = planRename(yard, request, today);
  return 'refused' in plan ? plan.refused : 'not refused';
}

/** The texts after a rename. Throws when it is refused. */
function renamed(yard: YardTexts, request: RenameRequest): Map<string, string> {
  const plan = planRename(yard, request, today);
  if ('refused' in plan) throw new Error(plan.refused);
  const texts = new Map(yard.texts);
  for (const { path } of plan.files) texts.delete(path);
  for (const { newPath, text } of plan.files) texts.set(newPath, text);
  return texts;
}

function reread(texts: ReadonlyMap<string, string>): YardTexts {
  return yardTexts([...texts].map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) })));
}

function diagnosticsOf(texts: ReadonlyMap<string, string>) {
  const sources = [...texts].map(([path, text]) => ({ path, bytes: new TextEncoder().encode(text) }));
  // What is only good to know was there before.
  return readRecords(sources, { asOf: today, photos }).diagnostics.filter(({ level }) => level !== 'info');
}

describe('a record renamed', () => {
  test.each([
    { kind: 'cultivar', from: 'bellwether', to: 'bell-wether' },
    { kind: 'lot', from: 'bellwether-2601', to: 'bellwether-2609' },
    { kind: 'guide', from: 'first-winter', to: 'winter' },
    { kind: 'video', from: 'layering', to: 'air-layering' },
    { kind: 'place', from: 'lexington-ky', to: 'bluegrass-ky' },
  ] as const)('the yard stays without a fault, and nothing but the id changes: $kind', request => {
    const after = renamed(base, request);
    expect(diagnosticsOf(after)).toEqual([]);
    expect(reread(after).ids[request.kind].has(request.to)).toBe(true);
    expect(after.get(addressesFile)).toContain(
      `${recordAddress(request.kind, request.from)},2026-11-25,${recordAddress(request.kind, request.to)}\n`,
    );
    after.delete(addressesFile);
    // Renamed back, every file has its old name and every byte of it.
    const back = renamed({ ...reread(after) }, { kind: request.kind, from: request.to, to: request.from });
    back.delete(addressesFile);
    expect(new Map([...back].sort())).toEqual(new Map([...base.texts].sort()));
  });

  test('line ends, byte order marks, comments and quotes stay', () => {
    const lots =
      '\ufeff# bellwether all over\r\n- lot: "a-1"   # bellwether\r\n  cultivar: \'bellwether\'\r\n  method: division\r\n';
    const walk = 'lot;note\r\n"a-1";"a-1; and\r\na-1"\r\na-11;a-1\r\n';
    const yard = reread(new Map([...base.texts, ['lots/x.yaml', lots], ['walks/2026-10-18.csv', walk]]));
    expect(renamed(yard, { kind: 'cultivar', from: 'bellwether', to: 'bw' }).get('lots/x.yaml')).toBe(
      lots.replace("'bellwether'", "'bw'"),
    );
    const after = renamed(yard, { kind: 'lot', from: 'a-1', to: 'b-1' });
    expect(after.get('lots/x.yaml')).toBe(lots.replace('"a-1"', '"b-1"'));
    expect(after.get('walks/2026-10-18.csv')).toBe(walk.replace('"a-1";', '"b-1";'));
  });

  test('an id that would be read as a number is put in quotes (YAML 1.2.2, 10.3)', () => {
    const after = renamed(base, { kind: 'lot', from: 'inkpot-2501', to: '2501' });
    expect(after.get('lots/2025-grafts.yaml')).toContain('lot: "2501"');
    expect(diagnosticsOf(after)).toEqual([]);
  });

  test('what was told of a lot follows it, under the id it was told with', () => {
    const told =
      '{"id":"tag:bench.example,2026-11-21:lot/bellwether-2601/ready","kind":"ready","day":"2026-11-21","lot":"bellwether-2601","forms":["dormant-pot"],"moves":[],"currency":"USD","left":3,"because":[]}\n';
    const after = renamed(withFile(base, 'changes.jsonl', told), {
      kind: 'lot',
      from: 'bellwether-2601',
      to: 'bellwether-2609',
    });
    expect(after.get('changes.jsonl')).toBe(
      told.replace('"lot":"bellwether-2601"', '"lot":"bellwether-2609"'),
    );
    expect(diagnosticsOf(after)).toEqual([]);
  });

  test('links in videos, parts included, and in text', () => {
    const video =
      'chapters:\n  - links: [guide:first-winter#frost, "guide:first-winter", cultivar:first-winter]\n';
    const text = '---\nname: x\n---\nSee [this](/guides/first-winter/#frost), not /guides/first-winter/.\n';
    const yard = withFile(withFile(base, 'videos/v.yaml', video), 'cultivars/x.md', text);
    const after = renamed(yard, { kind: 'guide', from: 'first-winter', to: 'winter' });
    expect(after.get('videos/v.yaml')).toBe(
      'chapters:\n  - links: [guide:winter#frost, "guide:winter", cultivar:first-winter]\n',
    );
    expect(after.get('cultivars/x.md')).toBe(text.replace('(/guides/first-winter/', '(/guides/winter/'));
  });
});

test('a part of a guide renamed: links to it follow, links to other parts and to the whole do not', () => {
  const video =
    'chapters:\n  - links: [guide:first-winter#frost, "guide:first-winter#frost", guide:first-winter, guide:first-winter#frost-2]\n';
  const text =
    '---\nname: x\n---\nSee [this](/guides/first-winter/#frost), [that](/guides/first-winter/#frosty) and [all](/guides/first-winter/).\n';
  const yard = withFile(withFile(base, 'videos/v.yaml', video), 'cultivars/x.md', text);
  const [from, to] = ['/guides/first-winter/#frost', '/guides/first-winter/#hard-nights'];
  const after = renamed(yard, { kind: 'address', from, to });
  expect(after.get('videos/v.yaml')).toBe(
    'chapters:\n  - links: [guide:first-winter#hard-nights, "guide:first-winter#hard-nights", guide:first-winter, guide:first-winter#frost-2]\n',
  );
  expect(after.get('cultivars/x.md')).toBe(text.replace('#frost)', '#hard-nights)'));
  expect(after.get(addressesFile)).toContain(`${from},2026-11-25,${to}\n`);
});

describe('the lines it adds', () => {
  const list = (...lines: string[]) =>
    withFile(base, addressesFile, `address,since,leads_to\n${lines.map(line => `${line}\n`).join('')}`);
  const added = (yard: YardTexts, request: RenameRequest) => {
    const before = yard.texts.get(addressesFile)!;
    const after = renamed(yard, request).get(addressesFile)!;
    expect(after.startsWith(before)).toBe(true);
    return after.slice(before.length).trimEnd().split('\n');
  };

  test('every page below the record, codes and earlier redirects lead straight on', () => {
    const yard = list(
      '/guides/first-winter/,2026-01-01,',
      '/guides/first-winter/#frost,2026-01-01,',
      '/guides/first-winter/lexington-ky/,2026-01-01,',
      '/go/3kfd/,2026-01-01,/guides/first-winter/',
      '/guides/winter-1/,2026-01-02,/guides/first-winter/',
      '/guides/first-winters/,2026-01-02,',
    );
    expect(added(yard, { kind: 'guide', from: 'first-winter', to: 'winter' })).toEqual([
      '/guides/first-winter/,2026-11-25,/guides/winter/',
      '/guides/first-winter/lexington-ky/,2026-11-25,/guides/winter/lexington-ky/',
      '/go/3kfd/,2026-11-25,/guides/winter/',
      '/guides/winter-1/,2026-11-25,/guides/winter/',
    ]);
    expect(added(yard, { kind: 'place', from: 'lexington-ky', to: 'bluegrass' })).toEqual([
      '/places/lexington-ky/,2026-11-25,/places/bluegrass/',
      '/guides/first-winter/lexington-ky/,2026-11-25,/guides/first-winter/bluegrass/',
    ]);
  });

  test('a record that gets its first name back has its page back', () => {
    const yard = list('/cultivars/bw/,2026-01-01,', '/cultivars/bw/,2026-02-01,/cultivars/bellwether/');
    expect(added(yard, { kind: 'cultivar', from: 'bellwether', to: 'bw' })).toEqual([
      '/cultivars/bellwether/,2026-11-25,/cultivars/bw/',
      '/cultivars/bw/,2026-11-25,',
    ]);
  });

  test('an address led on by itself goes straight to the end of a chain', () => {
    const yard = list(
      '/a/,2026-01-01,',
      '/b/,2026-01-01,/stock/',
      '/stock/,2026-01-01,',
      '/old/,2026-01-01,/a/',
    );
    expect(added(yard, { kind: 'address', from: '/a/', to: '/b/' })).toEqual([
      '/a/,2026-11-25,/stock/',
      '/old/,2026-11-25,/stock/',
    ]);
    expect(
      added(yard, { kind: 'address', from: '/guides/first-winter/#a', to: '/guides/first-winter/#b' }),
    ).toEqual(['/guides/first-winter/#a,2026-11-25,/guides/first-winter/#b']);
  });

  test('a record renamed by hand has its address led on, and its mentions changed', () => {
    const yard = list('/cultivars/bellwhether/,2026-01-01,');
    expect(added(yard, { kind: 'cultivar', from: 'bellwhether', to: 'bellwether' })).toEqual([
      '/cultivars/bellwhether/,2026-11-25,/cultivars/bellwether/',
    ]);
  });

  test('what cannot be done is refused, with the reason', () => {
    const yard = list(
      '/cultivars/gone/,2026-01-01,/stock/',
      '/stock/,2026-01-01,',
      '/x/,2026-01-01,/stock/',
      '/go/3kfd/,2026-01-01,/stock/',
    );
    const of = (kind: RenameRequest['kind'], from: string, to: string) =>
      refusal(yard, { kind, from, to } as RenameRequest);
    expect(of('cultivar', 'belwether', 'b')).toBe(
      'there is no cultivar "belwether"; did you mean "bellwether"?',
    );
    expect(of('cultivar', 'bellwether', 'inkpot')).toBe(
      'there is a cultivar "inkpot" already; choose another id.',
    );
    expect(of('cultivar', 'bellwether', 'gone')).toBe(
      '/cultivars/gone/ was published on 2026-01-01 for something else; choose another id.',
    );
    expect(of('cultivar', 'bellwether', 'Bell Wether')).toBe(
      '"Bell Wether" cannot be an id; did you mean "bell-wether"?',
    );
    expect(of('address', '/stock/', '/x/')).toBe(
      '/x/ leads to /stock/ already, so readers would go round in a circle.',
    );
    expect(of('address', '/y/', '/stok/')).toBe('no page /stok/ was ever published; did you mean "/stock/"?');
    expect(of('address', '/go/3kfd/', '/x/')).toMatch(/printed/);
    expect(of('address', '/cultivars/inkpot/', '/stock/')).toMatch(/rename -- cultivar inkpot NEW$/);
    expect(of('address', 'stock', '/x/')).toBe('"stock" is no address of this site; did you mean "/stock/"?');
  });
});

test('whatever is renamed in whatever order, back included, no address dies and no code changes hands', () => {
  const names = ['a', 'b', 'c', 'd'];
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(1), fc.constantFrom(...names)), { minLength: 40, maxLength: 40 }),
      steps => {
        let texts = new Map(base.texts);
        const owners = ['bellwether', 'inkpot'];
        const codesFirst = new Map<string, number>();
        for (const [who, to] of steps) {
          const plan = planRename(reread(texts), { kind: 'cultivar', from: owners[who]!, to }, today);
          if (!('refused' in plan)) {
            texts = renamed(reread(texts), { kind: 'cultivar', from: owners[who]!, to });
            owners[who] = to;
          }
          const pages = owners.map(id => recordAddress('cultivar', id));
          const { rows } = readAddresses(
            addressesFile,
            texts.get(addressesFile) ?? 'address,since,leads_to\n',
          );
          const built = pages.map(path => ({ path, ids: [], promised: [] }));
          const codes = assignCodes(rows, pages);
          const publication = publicationOf(rows, codes, built, { asOf: today, isPublished: true });
          expect(publication.lost).toEqual([]);
          for (const [at, page] of pages.entries()) {
            const code = codes.get(page)!;
            expect(codesFirst.get(code) ?? at).toBe(at);
            codesFirst.set(code, at);
          }
          texts.set(addressesFile, withRows(texts.get(addressesFile) ?? '', publication.news));
        }
        expect(diagnosticsOf(texts).filter(({ level }) => level === 'error')).toEqual([]);
        expect(codesFirst.size).toBe(2);
      },
    ),
    { seed: 5, numRuns: 4 },
  );
});

describe('a guide renamed and its heading reworded, in any order', () => {
  const heading = (text: string) => text[0]!.toUpperCase() + text.slice(1);

  /** Names the guide and its one heading anew, step by step, publishing in between; the list that comes of it. */
  function lived(steps: readonly (readonly ['guide' | 'part', string])[], publishes: readonly boolean[]) {
    let [guide, part] = ['first-winter', 'frost'];
    const body = base.texts.get('guides/first-winter.md')!;
    let texts = new Map([...base.texts, ['guides/first-winter.md', `${body}\n## Frost\n\nWords.\n`]]);
    const refusals: string[] = [];
    const publish = () => {
      const { rows } = readAddresses(addressesFile, texts.get(addressesFile) ?? 'address,since,leads_to\n');
      const built = [{ path: `/guides/${guide}/`, ids: [part], promised: [part] }];
      const { lost, news } = publicationOf(rows, new Map(), built, { asOf: today, isPublished: true });
      expect(lost).toEqual([]);
      texts.set(addressesFile, withRows(texts.get(addressesFile) ?? '', news));
    };
    publish();
    for (const [index, [what, to]] of steps.entries()) {
      const page = `/guides/${guide}/`;
      const request: RenameRequest =
        what === 'guide'
          ? { kind: 'guide', from: guide, to }
          : { kind: 'address', from: `${page}#${part}`, to: `${page}#${to}` };
      if (to === (what === 'guide' ? guide : part)) continue;
      const file = `guides/${guide}.md`;
      const reworded = texts.get(file)!.replace(`## ${heading(part)}\n`, `## ${heading(to)}\n`);
      const before = what === 'guide' ? texts : new Map([...texts, [file, reworded]]);
      const plan = planRename(reread(before), request, today);
      if ('refused' in plan) {
        refusals.push(plan.refused);
        continue;
      }
      texts = renamed(reread(before), request);
      if (what === 'guide') guide = to;
      else part = to;
      if (publishes[index]) publish();
      expect(diagnosticsOf(texts).filter(({ level }) => level === 'error')).toEqual([]);
    }
    publish();
    return { rows: readAddresses(addressesFile, texts.get(addressesFile)!).rows, refusals, guide, part };
  }

  test('renamed, reworded, renamed again: nothing is refused, and the first part leads to the last', () => {
    const steps = [
      ['guide', 'arrival'],
      ['part', 'cold'],
      ['guide', 'unpacking'],
    ] as const;
    for (const published of [true, false]) {
      const { rows, refusals } = lived(
        steps,
        steps.map(() => published),
      );
      expect(refusals).toEqual([]);
      expect(resolve(ledgerOf(rows), '/guides/first-winter/#frost')).toMatchObject({
        to: '/guides/unpacking/#cold',
      });
    }
  });

  test('every part that was ever published leads to the part of today', () => {
    const step = fc.oneof(
      fc.tuple(fc.constant('guide' as const), fc.constantFrom('first-winter', 'arrival', 'unpacking')),
      fc.tuple(fc.constant('part' as const), fc.constantFrom('frost', 'cold', 'ice')),
    );
    fc.assert(
      fc.property(
        fc.array(step, { maxLength: 8 }),
        fc.array(fc.boolean(), { minLength: 8, maxLength: 8 }),
        (steps, publishes) => {
          const { rows, refusals, guide, part } = lived(steps, publishes);
          expect(refusals).toEqual([]);
          const ledger = ledgerOf(rows);
          for (const address of ledger.latest.keys()) {
            const to = address.includes('#') ? `/guides/${guide}/#${part}` : `/guides/${guide}/`;
            expect(resolve(ledger, address), address).toMatchObject({ to });
          }
        },
      ),
      { seed: 31, numRuns: 40 },
    );
  });
});

test('a private file that has the new name already is not overwritten', () => {
  const moved = reread(
    new Map([
      ...[...base.texts].filter(([path]) => path !== 'cultivars/inkpot.md'),
      ['cultivars/ink-pot.md', base.texts.get('cultivars/inkpot.md')!],
      [addressesFile, 'address,since,leads_to\n/cultivars/inkpot/,2026-01-01,\n'],
      ['private/cultivars/inkpot.yaml', 'requests: 3\n'],
      ['private/cultivars/ink-pot.yaml', 'private_note: by hand\n'],
    ]),
  );
  expect(refusal(moved, { kind: 'cultivar', from: 'inkpot', to: 'ink-pot' })).toBe(
    'content/private/cultivars/ink-pot.yaml is there already; put both files into one first.',
  );
});

test('notes of walks in the private folder follow a lot', () => {
  const path = 'private/walks/2026-10-17.csv';
  const texts = renamed(withFile(base, path, 'lot,note\ninkpot-2501,for Ann\n'), {
    kind: 'lot',
    from: 'inkpot-2501',
    to: 'inkpot-2599',
  });
  expect(texts.get(path)).toBe('lot,note\ninkpot-2599,for Ann\n');
});

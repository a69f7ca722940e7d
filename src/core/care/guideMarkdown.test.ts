import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkGuideMarkdown, type GuideSetting } from './guideMarkdown.ts';
import { type Measure, measureText, parseMeasure } from './guideMeasures.ts';
import { LONGEST_SENTENCE_WORDS, sentenceOffenders } from './guideSentences.ts';

const setting: GuideSetting = {
  bodyLine: 7,
  kind: 'waking',
  species: [],
  forms: [],
  yardSpecies: ['fig', 'mulberry'],
};

function faults(body: string, over: Partial<GuideSetting> = {}): string[] {
  return checkGuideMarkdown(body, { ...setting, ...over }).map(
    ({ line, column, level, rule, got }) => `${line}:${column} ${level} ${rule} ${got}`,
  );
}

describe('checkGuideMarkdown', () => {
  it('accepts every directive rightly used', () => {
    const body = `Words for all, :before[early]{date="first-freeze" at="24F" chance="5-in-10"}, :after{date="safe-out"},
:around{date="last-freeze" at="32F"}, :measure[34 to 45 F] and :figure[its own limit]{of="leaf-damage"}.

::cautions

::task{name="move-in"}

::::part{winter="frozen cold" form="bare-root"}
Outer.

:::part{species="fig, mulberry" freeze="24F"}
Inner.
:::
::::

:::caution
Mind the step.
:::
`;
    expect(faults(body)).toEqual([]);
  });

  it('puts line and column of the file on every problem', () => {
    const body = `Words.

:::note
Unknown block.
:::

A :soon word and ::task inside.

::task{name="move-inn"}

:::part{winter="freezing" wetness="high"}
x
:::

:before{date="first-freeze"} :after{date="easter"} :around{date="budbreak" chance="1-in-10"} :measure[24] :figure{of="luck"}
`;
    expect(faults(body)).toEqual([
      '9:1 error guide-directive :::note',
      '13:3 error guide-directive :soon',
      '15:1 error guide-value move-inn',
      '17:1 error guide-attribute wetness',
      '17:1 error guide-value freezing',
      '21:1 error guide-attribute nothing',
      '21:30 error guide-value easter',
      '21:52 error guide-attribute chance',
      '21:94 error guide-measure 24',
      '21:107 error guide-value luck',
      '21:107 error guide-attribute nothing',
    ]);
  });

  it.each([
    [':::note\nA.\n:::\n', ':::part, :::caution', ':::part'],
    ['A :soon word.\n', ':before, :after, :around, :measure, :figure', ':measure'],
    ['::tasks{name="wake"}\n', '::cautions, ::task', '::task'],
    [':measure[24 F]{unit="F"}\n', 'nothing in { }', 'take the { } out'],
    [':::part\nA.\n:::\n', 'at least one condition', ':::part{winter="frozen cold"}'],
    [':before{date="budbreak" at="24F"}\n', 'date', 'date may stand there'],
    [':before{date="first-freeze" at="25F"}\n', '36F, 32F, 28F, 24F, 20F', '24F'],
    [':after{date="last-freeze" at="24F" chance="2-in-10"}\n', '1-in-10, 5-in-10, 9-in-10', '5-in-10'],
    [':before{at="24F"}\n', 'the name of a date', ':before{date="budbreak"}'],
    ['::task{name="move-in" when="now"}\n', 'name', 'name may stand there'],
    ['::task\n', 'name', '::task{name="move-in"}'],
    [':::part{freeze="cold"}\nA.\n:::\n', '36F, 32F, 28F, 24F, 20F', '28F'],
    [':::part{species=""}\nA.\n:::\n', 'fig, mulberry', 'fig'],
    [':measure[5 stone]\n', 'a number and one of F, C, degrees F', ':measure[34 to 45 F]'],
  ])('says of %j what is expected, and the way out', (body, expected, remedy) => {
    const [fault, ...more] = checkGuideMarkdown(`Words.\n\n${body}`, setting);
    expect(more).toEqual([]);
    expect(fault!.expected).toContain(expected);
    expect(fault!.remedy).toContain(remedy);
    expect(fault!.line).toBe(9);
  });

  it('finds blocks that are never closed, and fences that open nothing', () => {
    expect(faults('Words.\n\n:::part{air="dry"}\nNo end.\n')).toEqual(['9:1 error guide-unclosed :::part']);
    expect(
      faults('Words.\n\n:::part{air="dry"}\nA.\n\n:::part{form="bare-root"}\nB.\n:::\nC.\n:::\n'),
    ).toEqual(['12:1 error guide-unclosed :::part', '15:1 error guide-unclosed :::']);
    expect(faults('Words.\n\n:::part{air="dry\nA.\n:::\n')).toEqual([
      '9:1 error guide-unclosed :::part{air="dry',
    ]);
    expect(faults('Go :after{date="budbreak" soon.\n')).toEqual([
      '7:4 error guide-attribute nothing',
      '7:10 error guide-unclosed {date="budbreak" soon.',
    ]);
  });

  it('finds parts that contradict the part around them', () => {
    const nested = (outer: string, inner: string) =>
      `Words.\n\n::::part{${outer}}\nA.\n\n:::part{${inner}}\nB.\n:::\n::::\n`;
    expect(faults(nested('winter="cold"', 'winter="mild cool"'))).toEqual([
      '12:1 error guide-contradiction winter="mild cool"',
    ]);
    expect(faults(nested('winter="cold cool"', 'winter="mild cool"'))).toEqual([]);
    // A place without nights of 28 F has none of 24 F; one without 20 F may well have 28 F.
    expect(faults(nested('no-freeze="28F"', 'freeze="24F"'))).toEqual([
      '12:1 error guide-contradiction freeze="24F"',
    ]);
    expect(faults(nested('no-freeze="20F"', 'freeze="28F"'))).toEqual([]);
  });

  it('warns of parts that no reader of the guide sees', () => {
    const body =
      'Words.\n\n:::part{species="mulberry"}\nA.\n:::\n\n:::part{kept="ground"}\nB.\n:::\n\n:::part{form="bare-root"}\nC.\n:::\n';
    expect(faults(body)).toEqual([]);
    expect(faults(body, { species: ['fig'], kind: 'overwintering-pot', forms: ['leafed-pot'] })).toEqual([
      '9:1 warning guide-unseen species="mulberry"',
      '13:1 warning guide-unseen kept="ground"',
      '17:1 warning guide-unseen form="bare-root"',
    ]);
  });

  it('wants the cautions placed once', () => {
    expect(faults('Words.\n\n::cautions\n\n:::caution\nA.\n:::\n\n::cautions\n')).toEqual([
      '15:1 error guide-value ::cautions',
    ]);
  });

  it('refuses species the yard does not have', () => {
    expect(faults('Words.\n\n:::part{species="quince"}\nA.\n:::\n')).toEqual([
      '9:1 error guide-value quince',
    ]);
  });

  it('refuses HTML, pictures and links that could run script', () => {
    const body = `Words <b>bold</b>.

<script>alert(1)</script>

[a](javascript:alert(1)) [b](JaVaScRiPt:x) [c](data:text/html,x) [d](//elsewhere.example/) [e]( vbscript:x)

![x](y.png)

[ok](https://a.example/) [ok](/lots/) [ok](#part) [ok](mailto:a@b.example) [ok](guide/)

[ref]: javascript:alert(1)
`;
    expect(faults(body).map(text => text.split(' ').slice(0, 3).join(' '))).toEqual([
      '7:7 error markdown-html',
      '7:14 error markdown-html',
      '9:1 error markdown-html',
      '11:1 error markdown-link',
      '11:26 error markdown-link',
      '11:44 error markdown-link',
      '11:66 error markdown-link',
      '11:92 error markdown-link',
      '13:1 error markdown-image',
      '17:1 error markdown-link',
    ]);
  });

  it('refuses a guide that says nothing to everyone', () => {
    expect(faults('')).toEqual(['7:1 error guide-empty nothing']);
    expect(faults(':::part{air="dry"}\nA.\n:::\n')).toEqual([
      '7:1 error guide-empty only parts with conditions',
    ]);
    expect(faults('## Only a heading\n')).toEqual(['7:1 error guide-empty only parts with conditions']);
  });

  it.each([
    ['quotes', '> '.repeat(3000)],
    ['emphasis', '*a **b '.repeat(2000)],
    ['brackets', '['.repeat(5000)],
    ['lists', '- '.repeat(400)],
    ['blocks', Array.from({ length: 90 }, (_, i) => `${':'.repeat(93 - i)}caution`).join('\n')],
  ])('stands %s nested without end', (_what, body) => {
    const found = checkGuideMarkdown(`Words.\n\n${body}words`, setting);
    for (const { line } of found) expect(line).toBeGreaterThanOrEqual(setting.bodyLine);
  });

  it('never throws, whatever the text', () => {
    const pieces = fc.constantFrom(
      ':::part{winter="cold"}',
      '::::part{}',
      ':::',
      '::::',
      ':before{date=',
      '::task{name="wake"}',
      ':measure[24 F]',
      ':measure[',
      '\n',
      '\n\n',
      '- ',
      '> ',
      '## ',
      '<b>',
      '](javascript:x)',
      '[a',
      '{',
      '}',
      '"',
      'words ',
      '\\',
      '\u0000',
      '😀',
      '\t',
    );
    fc.assert(
      fc.property(fc.array(pieces, { maxLength: 30 }), fc.string(), (parts, tail) => {
        for (const fault of checkGuideMarkdown(parts.join('') + tail, setting)) {
          expect(fault.line).toBeGreaterThanOrEqual(setting.bodyLine);
          expect(fault.column).toBeGreaterThanOrEqual(1);
          expect(fault.message).not.toBe('');
        }
      }),
      { seed: 11, numRuns: 600 },
    );
  });
});

describe('measures', () => {
  const shown = (text: string, units: 'us' | 'metric') => measureText(parseMeasure(text) as Measure, units);

  it('are shown in the unit of the reader with the other beside it', () => {
    expect(shown('24 F', 'us')).toBe('24 F (-4.5 C)');
    expect(shown('24 F', 'metric')).toBe('-4.5 C (24 F)');
    expect(shown('1 to 7 C', 'us')).toBe('34 to 45 F (1 to 7 C)');
    expect(shown('2 in', 'metric')).toBe('5 cm (2 in)');
    // 4 quarts a gallon and 4 cups a quart (NIST Handbook 44, Appendix C), in halves.
    expect(shown('0.5 L', 'us')).toBe('2 cups (0.5 L)');
    expect(shown('1.7 to 2.8 L', 'us')).toBe('2 to 3 qt (1.7 to 2.8 L)');
    expect(shown('4 L', 'us')).toBe('1.1 gal (4 L)');
    expect(shown('2.5 qt', 'metric')).toBe('2.5 L (2.5 qt)');
    expect(shown('1.7 to 2.8 L', 'metric')).toBe('1.7 to 2.8 L (2 to 3 qt)');
    // Half centimeters below five, half meters from two on.
    expect(shown('1 in', 'us')).toBe('1 in (2.5 cm)');
    expect(shown('3 in', 'us')).toBe('3 in (8 cm)');
    expect(shown('3 ft', 'us')).toBe('3 ft (0.9 m)');
    expect(shown('10 to 20 ft', 'metric')).toBe('3 to 6 m (10 to 20 ft)');
  });

  // By NIST SP 811, appendix B: 2.54 cm an inch, 0.3048 m a foot, 3.785412 L a gallon, 0.4535924 kg a pound, 28.34952 g an ounce.
  it.each([
    ['20 in', '20 in (51 cm)'],
    ['100 cm', '39 in (100 cm)'],
    ['5 cm', '2 in (5 cm)'],
    // Halves of an inch below three, of a centimeter below five, of a meter from two on.
    ['7 cm', '3 in (7 cm)'],
    ['6 cm', '2.5 in (6 cm)'],
    ['8.3 cm', '3 in (8.3 cm)'],
    ['1.7 in', '1.7 in (4.5 cm)'],
    ['2.1 in', '2.1 in (5 cm)'],
    ['7 ft', '7 ft (2 m)'],
    ['6 ft', '6 ft (1.8 m)'],
    ['4 ft', '4 ft (1.2 m)'],
    ['100 ft', '100 ft (30.5 m)'],
    ['30 m', '98 ft (30 m)'],
    ['10 gal', '10 gal (38 L)'],
    ['10 qt', '10 qt (9.5 L)'],
    ['40 L', '10.6 gal (40 L)'],
    ['1 L', '1 qt (1 L)'],
    ['0.9 L', '4 cups (0.9 L)'],
    ['100 lb', '100 lb (45 kg)'],
    ['50 kg', '110 lb (50 kg)'],
    ['500 g', '18 oz (500 g)'],
    ['10 oz', '10 oz (285 g)'],
    ['10 degrees F', '10 degrees F (6 degrees C)'],
    ['10 degrees C', '18 degrees F (10 degrees C)'],
    ['-40 F', '-40 F (-40 C)'],
    ['100 C', '212 F (100 C)'],
  ])('%s are %s', (written, both) => {
    expect(shown(written, 'us')).toBe(both);
  });

  it('convert a difference without the shift of 32', () => {
    // NIST SP 811, B.8: a temperature interval converts with 9/5 alone.
    expect(shown('5 degrees C', 'us')).toBe('9 degrees F (5 degrees C)');
    expect(shown('5 C', 'us')).toBe('41 F (5 C)');
  });

  it.each(['24', 'F 24', '24 K', '24 to F', '1 to 2 to 3 F', ''])(
    'are refused when written as "%s"',
    text => {
      expect(parseMeasure(text)).toBeNull();
    },
  );
});

describe('sentenceOffenders', () => {
  const words = (count: number) =>
    `${Array.from({ length: count }, (_, i) => (i === 0 ? 'Word' : 'word')).join(' ')}.`;

  it('finds sentences over 35 words and no others', () => {
    const body = `${words(LONGEST_SENTENCE_WORDS)} ${words(LONGEST_SENTENCE_WORDS + 1)}\n\n- ${words(40)}\n`;
    expect(sentenceOffenders(body).map(({ line, words: count }) => [line, count])).toEqual([
      [1, 36],
      [3, 40],
    ]);
  });

  it('counts a date at the longest it can become', () => {
    const body = `${words(28).slice(0, -1)} :before{date="first-freeze" at="24F"}.\n`;
    expect(sentenceOffenders(body)).toHaveLength(1);
  });
});

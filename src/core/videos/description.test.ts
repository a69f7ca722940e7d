import { describe, expect, test } from 'vitest';
import { baseSpecies } from '../../../tests/world.ts';
import { normaliseGuide } from '../records/guide.ts';
import { normaliseSpecies, type WrittenSpecies, writtenSpecies } from '../records/species.ts';
import { normaliseVideo, type WrittenVideo, writtenVideo } from '../records/video.ts';
import { overTheLimit, type Subjects, videoDescription } from './description.ts';
import { saidPath } from './saidAddress.ts';

const hazard = (to: WrittenSpecies['hazards'][number]['to'], caution: string) => ({
  to,
  caution,
  standing: 'practice' as const,
  source: 'Common practice',
});
const fig = normaliseSpecies(
  'fig',
  writtenSpecies.parse({
    ...baseSpecies,
    hazards: [hazard('people', 'The sap burns skin\nin the sun.'), hazard('pets', 'Leaves upset dogs.')],
  }),
);
const jujube = normaliseSpecies(
  'jujube',
  writtenSpecies.parse({
    ...baseSpecies,
    botanical: 'Ziziphus jujuba',
    common: ['jujube'],
    hazards: [hazard('people', 'Thorns.')],
  }),
);
const stack = normaliseGuide(
  'winter',
  { title: 'Winter in a pot', kind: 'overwintering-pot', summary: 'Cold.', species: ['jujube'] },
  { text: 'Keep it cool.\n\n## Going in\n\nIn it goes.', line: 7 },
);
const arrival = normaliseGuide(
  'arrival',
  { title: 'The box comes', kind: 'arrival', summary: 'Open it.', species: ['jujube'] },
  { text: 'Open it.', line: 7 },
);
const trees = new Map([
  ['amber', { name: 'Amber', species: fig }],
  ['thorn', { name: 'Thorn', species: jujube }],
]);
const codes = new Map([
  ['/videos/v/', 'kkkk'],
  ['/cultivars/amber/', 'aaaa'],
  ['/lots/a-1/', 'cccc'],
  ['/guides/winter/', 'dddd'],
]);
const subjects: Subjects = {
  addressOf: link =>
    `https://yard.example${saidPath(link === 'video' ? { kind: 'video', id: 'v', part: null } : link, at => codes.get(at))}`,
  cultivar: id => trees.get(id) ?? null,
  lot: id => (id === 'a-1' ? trees.get('amber')! : null),
  guide: id => ({ winter: stack, arrival })[id] ?? null,
  place: id => (id === 'hills' ? { name: 'Asheville' } : null),
  species: [fig, jujube],
};

function video(chapters: WrittenVideo['chapters'], more: Partial<WrittenVideo> = {}) {
  return normaliseVideo(
    'v',
    writtenVideo.parse({ title: 'On the bench', date: '2026-09-26', chapters, ...more }),
  );
}

describe('the text below a video', () => {
  test('has title, summary, the page, chapters, what they speak of and cautions, in that order', () => {
    const { text } = videoDescription(
      video(
        [
          { time: '0:00', title: 'Hello' },
          { time: '1:35', title: 'A  layer\nin moss', links: ['lot:a-1', 'cultivar:amber', 'place:hills'] },
          {
            time: '1:02:30',
            title: 'Winter',
            links: ['cultivar:amber', 'guide:winter', 'guide:winter#going-in'],
          },
        ],
        { summary: 'What we saw.' },
      ),
      subjects,
    );
    expect(text.split('\n\n').slice(0, 5)).toEqual([
      'On the bench',
      'What we saw.',
      'All of it, as it stands today: https://yard.example/go/kkkk/',
      '0:00 Hello\n1:35 A layer in moss\n1:02:30 Winter',
      [
        'Amber (fig), lot a-1: https://yard.example/go/cccc/',
        'Amber (fig): https://yard.example/go/aaaa/',
        'Climate of Asheville: https://yard.example/places/hills/',
        'Guide: Winter in a pot: https://yard.example/go/dddd/',
        'Guide: Winter in a pot, Going in: https://yard.example/guides/winter/#going-in',
      ].join('\n'),
    ]);
    const cautions = text.split('\n\n')[5]!.split('\n');
    expect(cautions.slice(0, 2)).toEqual([
      'Take care (fig): The sap burns skin in the sun.',
      'Take care (fig, pets): Leaves upset dogs.',
    ]);
    expect(cautions[2]).toMatch(/^Before you do it yourself: .*lifting.*heaters and fumes.*decide\.$/);
  });

  test('warns of the plants of a guide when no tree is shown, and of nothing when nothing is handled', () => {
    const only = (links: string[]) =>
      videoDescription(video([{ time: '0:00', title: 'One', links }]), subjects).text;
    expect(only(['guide:winter'])).toContain('Take care (jujube): Thorns.');
    expect(only(['guide:winter'])).not.toContain('sap');
    expect(only(['cultivar:thorn'])).not.toContain('Before you do it yourself');
    expect(only(['place:hills'])).not.toContain('Take care');
  });

  test('tells the law on moving plants below films of a tree that travels, for each species shown, and not below others', () => {
    const below = (links: string[]) =>
      videoDescription(video([{ time: '0:00', title: 'One', links }]), subjects).text.split('\n');
    const law = (name: string, { movement }: { movement: string }) =>
      `Moving ${name} plants: ${movement.replace(/\s+/g, ' ').trim()}`;
    expect(below(['guide:arrival', 'cultivar:amber'])).toContain(law('fig', fig));
    expect(below(['guide:arrival'])).toContain(law('jujube', jujube));
    expect(below(['guide:winter', 'cultivar:amber']).join()).not.toContain('Moving fig');
  });

  test('leaves out a lot that is not there on the day, and says a thing once', () => {
    const { text } = videoDescription(
      video([
        { time: '0:00', title: 'One', links: ['lot:gone', 'cultivar:amber'] },
        { time: '1:00', title: 'Two', links: ['cultivar:amber'] },
      ]),
      subjects,
    );
    expect(text).not.toContain('gone');
    expect(text.split('/go/aaaa/')).toHaveLength(2);
  });

  test('counts characters, not code units, and says by how many it is over and which chapter is longest', () => {
    const made = videoDescription(
      video([
        { time: '0:00', title: '🌳🌳' },
        { time: '1:00', title: 'Two', links: ['cultivar:amber'] },
      ]),
      subjects,
    );
    expect(made.length).toBe([...made.text].length);
    expect(made.length).toBeLessThan(made.text.length);
    expect(overTheLimit(made, made.length)).toBeNull();
    expect(overTheLimit(made, made.length - 1)).toBe(
      `the text below the video is 1 character over the limit of ${made.length - 1}; its longest chapter, at 1:00, takes ${'1:00 Two\nAmber (fig): https://yard.example/go/aaaa/'.length}`,
    );
  });
});

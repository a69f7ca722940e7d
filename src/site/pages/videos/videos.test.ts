import { describe, expect, test } from 'vitest';
import { catalogueOf, type World, worldRecords } from '../../../../tests/world.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { normaliseGuide } from '../../../core/records/guide.ts';
import { normaliseVideo, type WrittenVideo, writtenVideo } from '../../../core/records/video.ts';
import { linkedThings } from './linkedThing.ts';
import { seenIn } from './seenIn.ts';
import { videoLines, videoView } from './video.ts';
import { descriptionFile, endCardAddress } from './videoFiles.ts';

const asOf = '2026-11-25';
const guide = normaliseGuide(
  'winter',
  { title: 'Winter', kind: 'overwintering-pot', summary: 'How to keep it.' },
  { text: 'Keep it cool.\n\n## Going in\n\nIn it goes.', line: 6 },
);

const chapter = (time: string, title: string, links: string[] = []) => ({ time, title, links });

/** A catalogue with videos, each by what differs from an empty one. */
function shown(world: World, videos: Record<string, Partial<WrittenVideo>> = {}): Catalogue {
  const records = worldRecords(world);
  records.guides.set('winter', guide);
  records.videos = Object.entries(videos).map(([id, differs]) =>
    normaliseVideo(
      id,
      writtenVideo.parse({
        title: `Title of ${id}`,
        date: '2026-06-01',
        chapters: [chapter('0:00', 'All')],
        ...differs,
      }),
    ),
  );
  return catalogueOf(records, asOf);
}

const two = { cultivars: { amber: { name: 'Amber' }, brown: { name: 'Brown' } } };
const soldOn = (lot: string) => ({ lot, left: 0 });
const thing = (all: Catalogue, link: string, also: string[] = []) =>
  linkedThings(
    all,
    normaliseVideo(
      'v',
      writtenVideo.parse({
        title: 'T',
        date: '2026-06-01',
        chapters: [chapter('0:00', 'C', [link, ...also])],
      }),
    ).chapters[0]!.links,
  )[0]!;

describe('what a chapter links to', () => {
  const world: World = {
    ...two,
    lots: [
      { lot: 'a-1', cultivar: 'amber' },
      { lot: 'a-2', cultivar: 'amber' },
      { lot: 'b-1', cultivar: 'brown' },
    ],
  };

  test('a lot that stands on the list says how, for how much and how many are left', () => {
    const all = shown(world);
    const entry = all.lots.find(({ lot }) => lot.id === 'a-1')!;
    const { kind, name, path, state, note, on } = thing(all, 'lot:a-1');
    expect([kind, name, path]).toEqual(['Lot', 'Amber, lot a-1', '/lots/a-1/']);
    expect(state?.state).not.toBe('blocked');
    expect(note).toMatch(new RegExp(`^Fig\\. .+, \\$\\d+\\. ${entry.stock.left} left\\.$`));
    expect(on).toEqual([]);
  });

  test('a lot that is sold says so and leads to the next lot of its cultivar', () => {
    const all = shown({ ...world, walks: { '2026-11-20': [soldOn('a-1')] } });
    const { path, state, note, on } = thing(all, 'lot:a-1');
    expect(path).toBe('/lots/a-1/');
    expect(state).toEqual({ state: 'blocked', words: 'Sold' });
    expect(note).toBe('Fig. None left.');
    expect(on.map(way => way.path)).toEqual(['/lots/a-2/']);
    expect(on[0]!.state).toEqual(thing(all, 'lot:a-2').state);
  });

  test('where no lot of the cultivar is left, to the nearest cultivar that has one', () => {
    const all = shown({ ...world, walks: { '2026-11-20': [soldOn('a-1'), soldOn('a-2')] } });
    expect(thing(all, 'lot:a-1').on.map(way => way.path)).toEqual(['/cultivars/brown/']);
    const cultivar = thing(all, 'cultivar:amber');
    expect(cultivar.state?.words).toBe('Sold');
    expect(cultivar.note).toContain('No lots on the list.');
    expect(cultivar.on.map(way => way.path)).toEqual(['/cultivars/brown/']);
  });

  test('where the next lot is held back, to both', () => {
    const held = { lot: 'a-2', cultivar: 'amber', hold: { since: '2026-10-01', why: 'Leaf spot.' } };
    const all = shown({
      ...two,
      lots: [{ lot: 'a-1', cultivar: 'amber' }, held, { lot: 'b-1', cultivar: 'brown' }],
      walks: { '2026-11-20': [soldOn('a-1')] },
    });
    expect(thing(all, 'lot:a-1').on.map(way => way.path)).toEqual(['/lots/a-2/', '/cultivars/brown/']);
    expect(thing(all, 'lot:a-2').state?.words).toBe('Held back');
    expect(thing(all, 'lot:a-2').on.map(way => way.path)).toEqual(['/cultivars/brown/']);
  });

  test('a lot that starts later has no page yet, and the page of its video says so', () => {
    const { path, state, note, on } = thing(shown(world), 'lot:not-begun');
    expect([path, state, note, on]).toEqual([null, null, 'Not yet started.', []]);
  });

  test('a cultivar says how many lots it has, and no price while none of them is ready', () => {
    const all = shown(world);
    const states = all.lots
      .filter(({ cultivar }) => cultivar.id === 'amber')
      .flatMap(({ forms }) => forms.map(({ state }) => state));
    expect(states).not.toContain('ready');
    expect(thing(all, 'cultivar:amber').note).toMatch(/ 2 lots on the list\.$/);
    expect(thing(all, 'cultivar:amber').on).toEqual([]);
  });

  test('a guide leads to its part, and to the dates of a place the chapter names', () => {
    const all = shown(world);
    const whole = thing(all, 'guide:winter');
    expect([whole.name, whole.path, whole.note]).toEqual(['Winter', '/guides/winter/', 'How to keep it.']);
    expect(whole.on[0]!.path).toBe('/guides/winter/#places');
    const part = thing(all, 'guide:winter#going-in', ['place:hills']);
    expect([part.name, part.path]).toEqual(['Winter: Going in', '/guides/winter/#going-in']);
    expect(part.on[0]!.path).toBe('/guides/winter/hills/#going-in');
  });

  test('a place is named with its region', () => {
    const { path, note } = thing(shown(world), 'place:hills');
    expect(path).toBe('/places/hills/');
    expect(note).toContain('United States');
  });
});

describe('the pages of videos', () => {
  const videos = {
    old: { date: '2026-05-01', chapters: [chapter('0:00', 'Start', ['lot:a-1'])] },
    b: { date: '2026-06-01', summary: 'What it is.' },
    a: {
      date: '2026-06-01',
      watch: 'https://www.video.example/watch?v=1',
      chapters: [chapter('0:00', 'Start'), chapter('1:02:30', 'End', ['cultivar:amber', 'lot:a-1'])],
    },
  };
  const world: World = { ...two, lots: [{ lot: 'a-1', cultivar: 'amber' }] };
  const all = shown(world, videos);

  test('are listed newest first, those of one day by id', () => {
    expect(videoLines(all).map(({ path }) => path)).toEqual(['/videos/a/', '/videos/b/', '/videos/old/']);
    expect(videoLines(all)[1]).toMatchObject({ date: 'June 1, 2026', summary: 'What it is.' });
    expect(videoLines(all)[0]!.summary).toBe('2 chapters: Start; End.');
  });

  test('name every chapter by its start and say where to watch', () => {
    const { watch, chapters } = videoView(all, all.videos[0]!);
    expect(watch).toEqual({ address: 'https://www.video.example/watch?v=1', at: 'video.example' });
    expect(chapters.map(({ id, time }) => [id, time])).toEqual([
      ['t-0', '0:00'],
      ['t-3750', '1:02:30'],
    ]);
    expect(videoView(all, all.videos[1]!).watch).toBeNull();
    const written = (watch: string) => videoView(all, { ...all.videos[0]!, watch }).watch?.at;
    expect(written('mailto:yard@bench.example')).toBe('mailto:yard@bench.example');
    expect(written('https://%')).toBe('https://%');
  });

  test('are led to from what they speak of: a chapter about a lot also speaks of its cultivar, once', () => {
    const paths = (kind: 'lot' | 'cultivar' | 'guide', id: string) =>
      seenIn(all, kind, id).map(({ path }) => path);
    expect(paths('lot', 'a-1')).toEqual(['/videos/a/#t-3750', '/videos/old/#t-0']);
    expect(paths('cultivar', 'amber')).toEqual(['/videos/a/#t-3750', '/videos/old/#t-0']);
    expect(paths('cultivar', 'brown')).toEqual([]);
    expect(paths('guide', 'winter')).toEqual([]);
  });

  test('come with a text whose short addresses are those of the catalogue, and refuse one that is too long', () => {
    const absolute = (path: string) => `https://bench.example/orchard${path}`;
    const video = all.videos[0]!;
    const text = descriptionFile(all, video, absolute);
    for (const path of ['/videos/a/', '/cultivars/amber/', '/lots/a-1/']) {
      expect(text).toContain(`https://bench.example/orchard/go/${all.codes.get(path)!}/`);
    }
    expect(endCardAddress(all, video, absolute)).toBe(
      `https://bench.example/orchard/go/${all.codes.get('/videos/a/')!}/`,
    );
    const tight = { ...all, yard: { ...all.yard, videoDescriptionLimit: [...text].length } };
    expect(descriptionFile(tight, video, absolute)).toBe(text);
    tight.yard.videoDescriptionLimit -= 1;
    expect(() => descriptionFile(tight, video, absolute)).toThrow(/video a: .* 1 character over the limit/);
  });
});

import { expect, test } from 'vitest';
import { movedFiles } from './movedFiles.ts';

const files = [
  'guides/winter/index.html',
  'guides/winter/bluegrass.ics',
  'guides/winter/bluegrass/index.html',
  'guides/winter/bluegrass/bare-root.ics',
  'guides/winter/bluegrass-hills.ics',
  'guides/other/bluegrass.ics',
  'places/bluegrass.json',
  'places.json',
  'compare/bellwether.json',
  'videos/layering/qr.png',
  'videos/layering/qr.svg',
  'videos/layering/description.txt',
  'stock.json',
];

test('calendars, places and what lies beside a video follow their page', () => {
  const redirects = [
    { from: '/guides/first-winter/bluegrass/', to: '/guides/winter/bluegrass/' },
    { from: '/guides/first-winter/', to: '/guides/winter/' },
    { from: '/places/lexington/', to: '/places/bluegrass/' },
    { from: '/videos/air/', to: '/videos/layering/' },
  ];
  expect(movedFiles(redirects, files)).toEqual([
    { from: '/guides/first-winter/bluegrass.ics', to: '/guides/winter/bluegrass.ics' },
    { from: '/guides/first-winter/bluegrass/bare-root.ics', to: '/guides/winter/bluegrass/bare-root.ics' },
    { from: '/places/lexington.json', to: '/places/bluegrass.json' },
    { from: '/videos/air/description.txt', to: '/videos/layering/description.txt' },
    { from: '/videos/air/qr.png', to: '/videos/layering/qr.png' },
    { from: '/videos/air/qr.svg', to: '/videos/layering/qr.svg' },
  ]);
});

test('nothing is put where a page of another kind is led to, at a short address, or where a file lies already', () => {
  const redirects = [
    { from: '/places/gone/', to: '/places/' },
    { from: '/go/3467/', to: '/videos/layering/' },
    { from: '/stock/page/2/', to: '/stock/' },
    { from: '/cultivars/old/', to: '/cultivars/bellwether/' },
    { from: '/guides/other/bluegrass/', to: '/guides/winter/bluegrass/' },
  ];
  expect(movedFiles(redirects, files)).toEqual([
    { from: '/guides/other/bluegrass/bare-root.ics', to: '/guides/winter/bluegrass/bare-root.ics' },
  ]);
});

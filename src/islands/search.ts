/** Search in the index that the build makes. Loaded on the search page only; the index itself when a word is there to look for. */

export interface Found {
  url: string;
  meta: { title?: string; summary?: string };
}

interface Index {
  init(): Promise<void>;
  search(term: string): Promise<{ results: { data(): Promise<Found> }[] }>;
}

/** Results shown at once, and added with each press of the button. */
const shownAtOnce = 20;
const restBeforeSearchMs = 150;

function part<T extends HTMLElement>(name: string): T {
  const found = document.querySelector<T>(`[data-${name}]`);
  if (!found) throw new Error(`no [data-${name}] on the page`);
  return found;
}

const form = part<HTMLFormElement>('search');
const message = part('search-status');
const list = part('search-results');
const more = part<HTMLButtonElement>('search-more');
const box = form.querySelector('input') as HTMLInputElement;

let index: Promise<Index> | undefined;
/** Counts searches, so that a slow answer never replaces a newer one. */
let latest = 0;

function loadIndex(): Promise<Index> {
  index ??= (async () => {
    const script = new URL('pagefind.js', new URL(form.dataset.index ?? '', location.href));
    const loaded: Index = await import(/* @vite-ignore */ script.href);
    await loaded.init();
    return loaded;
  })();
  return index;
}

function row({ url, meta }: Found): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = url;
  link.textContent = meta.title ?? url;
  const line = document.createElement('p');
  line.textContent = meta.summary ?? '';
  item.append(link, line);
  return item;
}

async function show(term: string): Promise<void> {
  latest += 1;
  const mine = latest;
  if (term === '') {
    list.hidden = true;
    more.hidden = true;
    message.textContent = '';
    return;
  }
  message.textContent = 'Looking…';
  const { results } = await (await loadIndex()).search(term);
  if (mine !== latest) return;
  list.replaceChildren();
  const add = async () => {
    const next = results.slice(list.children.length, list.children.length + shownAtOnce);
    const found = await Promise.all(next.map(result => result.data()));
    if (mine !== latest) return;
    list.append(...found.map(row));
    more.hidden = list.children.length >= results.length;
  };
  await add();
  if (mine !== latest) return;
  more.onclick = () => void add();
  list.hidden = results.length === 0;
  message.textContent =
    results.length === 0
      ? `Nothing has “${term}” in it. Try fewer letters, a flavour, or a species.`
      : `${results.length} ${results.length === 1 ? 'cultivar' : 'cultivars'} with “${term}”`;
}

async function look(): Promise<void> {
  const term = box.value.trim();
  const address = new URL(location.href);
  if (term === '') address.searchParams.delete('q');
  else address.searchParams.set('q', term);
  history.replaceState(null, '', address);
  try {
    await show(term);
  } catch {
    index = undefined;
    message.textContent = 'The search index could not be loaded. Everything is in the lists below.';
  }
}

let rest: ReturnType<typeof setTimeout> | undefined;

box.addEventListener('focus', () => void loadIndex().catch(() => (index = undefined)), { once: true });
box.addEventListener('input', () => {
  clearTimeout(rest);
  rest = setTimeout(() => void look(), restBeforeSearchMs);
});
form.addEventListener('submit', event => {
  event.preventDefault();
  clearTimeout(rest);
  void look();
});

const asked = new URLSearchParams(location.search).get('q');
if (asked) {
  box.value = asked;
  void look();
}

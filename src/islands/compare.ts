/** Compares up to four cultivars side by side. The choice stands in the address, so that it can be kept and sent. */

import type { ComparedFile } from '../site/data/comparedFile.ts';

const form = document.querySelector<HTMLFormElement>('form[data-compare]')!;
const picker = form.querySelector('select')!;
const adder = form.querySelector('button')!;
const status = document.querySelector<HTMLElement>('[data-compare-status]')!;
const frame = document.querySelector<HTMLElement>('[data-compare-table]')!;
const only = form.querySelector<HTMLInputElement>('[data-compare-only]')!;
const most = Number(form.dataset.most);
/** Room for a plate in a column, px. */
const plateRoom = 190;

const known = new Map([...picker.options].map(({ value, text }) => [value, text]));
const files = new Map<string, Promise<ComparedFile>>();
let latest = 0;

function chosen(): string[] {
  const asked = new URLSearchParams(location.search).getAll('c').flatMap(part => part.split(','));
  return [...new Set(asked)].filter(id => known.has(id)).slice(0, most);
}

function choose(ids: readonly string[]): void {
  history.replaceState(null, '', ids.length === 0 ? location.pathname : `?c=${ids.join(',')}`);
  void show();
}

function load(id: string): Promise<ComparedFile> {
  let file = files.get(id);
  if (!file) {
    file = fetch(`${form.dataset.compare}${id}.json`).then(answer => {
      if (!answer.ok) throw new Error(String(answer.status));
      return answer.json() as Promise<ComparedFile>;
    });
    file.catch(() => files.delete(id));
    files.set(id, file);
  }
  return file;
}

function make<K extends keyof HTMLElementTagNameMap>(
  name: K,
  content: (Node | string)[],
  set: Record<string, string> = {},
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(set)) made.setAttribute(key, value);
  made.append(...content);
  return made;
}

function svg(name: string, set: Record<string, string | number>, content: Node[] = []): SVGElement {
  const made = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(set)) made.setAttribute(key, String(value));
  made.append(...content);
  return made;
}

function drawing(text: string): SVGSVGElement {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml').documentElement;
  return document.importNode(parsed, true) as unknown as SVGSVGElement;
}

/** Enlarges or reduces all plates by one factor, so that the widest fits. */
function toOneScale(plates: readonly SVGSVGElement[]): void {
  const size = (plate: SVGSVGElement, side: string) => Number(plate.getAttribute(side));
  const factor = plateRoom / Math.max(...plates.map(plate => size(plate, 'width')));
  for (const plate of plates) {
    for (const side of ['width', 'height'])
      plate.setAttribute(side, String(Math.round(size(plate, side) * factor)));
  }
}

function seasonBar({ bars, words }: ComparedFile['season']): SVGElement {
  return svg(
    'svg',
    {
      class: 'season-bar',
      viewBox: '0 0 365 16',
      preserveAspectRatio: 'none',
      role: 'img',
      'aria-label': words,
    },
    [
      svg('use', { href: '#season-grid' }),
      ...bars.flatMap(({ parts, middle, headStart }) => [
        ...parts.map(({ from, width }) =>
          svg('rect', { class: headStart ? 'early' : 'ripe', x: from, y: 4, width, height: 8 }),
        ),
        svg('path', { class: 'middle', d: `M${middle} 2v12` }),
      ]),
    ],
  );
}

function remover(id: string, name: string): HTMLButtonElement {
  const button = make('button', ['Remove ', make('span', [name], { class: 'unseen' })], { type: 'button' });
  button.onclick = () => {
    choose(chosen().filter(other => other !== id));
    picker.focus();
  };
  return button;
}

function row(
  label: string,
  names: readonly string[],
  cells: (Node | string)[],
  state: 'alike' | 'differs' | 'always',
): HTMLTableRowElement {
  const mark = state === 'differs' ? [' ', make('span', ['differs'], { class: 'differs' })] : [];
  return make(
    'tr',
    [
      make('th', [label, ...mark], { scope: 'row' }),
      ...cells.map((cell, at) => make('td', [cell], { 'data-name': names[at] ?? '' })),
    ],
    state === 'alike' ? { class: 'alike' } : {},
  );
}

function table(ids: readonly string[], compared: readonly ComparedFile[]): HTMLElement {
  const plates = compared.map(({ plate }) => drawing(plate));
  toOneScale(plates);
  const names = compared.map(({ name }) => name);
  const heads = compared.map(({ name, link }, i) =>
    make('th', [make('a', [name], { href: link }), remover(ids[i] as string, name)], { scope: 'col' }),
  );
  const facts = (compared[0]?.facts ?? []).map(([label], i) => {
    const values = compared.map(file => file.facts[i]?.[1] ?? '');
    return row(label, names, values, new Set(values).size > 1 ? 'differs' : 'alike');
  });
  const season = [
    row('Fruit, to one scale', names, plates, 'always'),
    row(
      `At ${frame.dataset.place}`,
      names,
      compared.map(file => make('div', [seasonBar(file.season), file.season.words])),
      'always',
    ),
  ];
  const caption = make('caption', [`Cultivars side by side; the year runs from ${frame.dataset.year}`]);
  const head = make('thead', [make('tr', [make('td', []), ...heads])]);
  const whole = make('table', [caption, head, make('tbody', [...season, ...facts])], {
    class: 'side-by-side',
  });
  return make('section', [whole], { class: 'scroll', 'aria-label': 'Comparison', tabindex: '0' });
}

/** Only what is not chosen yet can be added. */
function offerOthers(ids: readonly string[]): void {
  const options = [...picker.options];
  for (const option of options) option.disabled = ids.includes(option.value);
  if (!picker.selectedOptions[0]?.disabled) return;
  const next = options.find(({ disabled }, at) => !disabled && at > picker.selectedIndex);
  picker.value = (next ?? options.find(({ disabled }) => !disabled))?.value ?? '';
}

async function show(): Promise<void> {
  latest += 1;
  const mine = latest;
  const ids = chosen();
  adder.disabled = ids.length >= most;
  offerOthers(ids);
  const names = ids.map(id => known.get(id));
  status.textContent =
    ids.length === 0
      ? `Add up to ${most} cultivars.`
      : `${names.join(', ')}. ${ids.length < most ? `Room for ${most - ids.length} more.` : 'That is as many as fit.'}`;
  try {
    const compared = await Promise.all(ids.map(load));
    if (mine === latest) frame.replaceChildren(...(ids.length === 0 ? [] : [table(ids, compared)]));
  } catch {
    if (mine === latest)
      status.textContent = 'A cultivar could not be loaded. The tables below compare them as well.';
  }
}

form.addEventListener('submit', event => {
  event.preventDefault();
  choose([...new Set([...chosen(), picker.value])].slice(0, most));
});
addEventListener('popstate', () => void show());
only.addEventListener('change', () => frame.classList.toggle('only-differences', only.checked));
form.hidden = false;
void show();

/** A list of trees to ask for, kept on the device; one button writes it into an email or copies it. Nothing is sent by the page. */

import { priceInWords } from '../core/money.ts';
import type { OrderFile } from '../site/pages/ordering/orderLots.ts';
import { answersFor, fetchJson } from './myPlace/answers.ts';
import { currentChoice, onChange } from './myPlace/choice.ts';
import { orderKey } from './orderKey.ts';
import {
  deliveryOf,
  type KnownLine,
  knownLine,
  type OrderLine,
  type OrderPlace,
  orderText,
  parseLines,
  totalWords,
  weekLines,
} from './orderLines.ts';
import { link, make } from './search/results.ts';

const part = document.querySelector<HTMLElement>('[data-order-list]')!;
const body = part.querySelector<HTMLElement>('[data-order-rows]')!;
const say = part.querySelector<HTMLElement>('[role="status"]')!;
const parcels = part.querySelector<HTMLElement>('[data-order-parcels]')!;
const form = part.querySelector('form')!;
const [lotField, formField] = [form.querySelector('input')!, form.querySelector('select')!];
const [mail, copy, clear] = [
  part.querySelector<HTMLAnchorElement>('[data-order-mail]')!,
  part.querySelector<HTMLButtonElement>('[data-order-copy]')!,
  part.querySelector<HTMLButtonElement>('[data-order-clear]')!,
];
/** Held here too, for browsers that keep nothing. */
let lines: OrderLine[] = [];
try {
  lines = parseLines(localStorage.getItem(orderKey));
} catch {
  say.textContent =
    'This browser does not let the page remember the list: it holds until you leave this page.';
}

function keep(next: OrderLine[]): void {
  lines = next;
  try {
    localStorage.setItem(orderKey, JSON.stringify(lines));
  } catch {
    // Held as long as the page is open.
  }
}

function row(file: OrderFile, line: OrderLine): HTMLLIElement {
  const item = knownLine(file, line);
  const away = make('button', '', 'Remove ', make('span', 'unseen', `lot ${line.lot}`));
  away.type = 'button';
  away.onclick = () => {
    keep(lines.filter(other => other !== line));
    show(file);
    lotField.focus();
  };
  if (item === null) return make('li', '', `Lot ${line.lot} is no longer on the list. `, away);
  const { lot, form: offer, count: kept } = item;
  const count = make('input', '');
  count.type = 'number';
  count.min = '1';
  count.max = String(lot.left);
  count.value = String(kept);
  count.setAttribute('aria-label', `How many of lot ${lot.lot}`);
  count.onchange = () => {
    const asked = Math.min(lot.left, Math.max(1, Math.round(Number(count.value)) || 1));
    keep(lines.map(other => (other === line ? { ...line, count: asked } : other)));
    show(file);
  };
  const price =
    offer.price === null
      ? 'price on request'
      : `${priceInWords({ minor: offer.price, currency: file.currency })} each`;
  return make(
    'li',
    '',
    make(
      'p',
      '',
      count,
      ' ',
      link(`/lots/${lot.lot}/`, `${lot.cultivar}, lot ${lot.lot}`),
      ` ${offer.name.toLowerCase()}, ${price} `,
      away,
    ),
    make('p', 'standing', `${offer.words}. ${lot.left} left. ${offer.carton}`),
  );
}

/** The place chosen, as far as it is known by now: its weeks come with its file. */
let place: OrderPlace | null = null;

/** Asks for the place that is chosen, and shows the list again once it is known. */
async function followPlace(file: OrderFile): Promise<void> {
  const choice = currentChoice();
  place = null;
  show(file);
  if (choice === null) return;
  try {
    const { travel, weeks, region, country } = await answersFor(choice);
    if (currentChoice()?.name !== choice.name) return;
    place = { name: choice.name.split(',')[0] ?? choice.name, sent: travel.route, weeks, region, country };
    show(file);
  } catch {
    // Without the network the list stands as it is, and the place by its name.
  }
}

function listOf(lines: readonly string[]): HTMLUListElement {
  return make('ul', '', ...lines.map(line => make('li', '', line)));
}

/** Parcels, delivery and sending weeks below the list. */
function showParcels(file: OrderFile, known: readonly KnownLine[]): void {
  const delivery = deliveryOf(file, known, place);
  const weeks = weekLines(known, place);
  const parts: Node[] = [];
  if (delivery.parcels.length > 0) {
    parts.push(make('h3', '', 'Parcels'), listOf(delivery.parcels));
    parts.push(
      make(
        'p',
        'standing',
        'Trees of one form and size share a carton. Carriers bill the larger of weight and size.',
      ),
    );
  }
  if (delivery.words !== '') parts.push(make('p', '', delivery.words));
  if (weeks.length > 0) parts.push(make('h3', '', `Weeks in which we send to ${place?.name}`), listOf(weeks));
  parcels.replaceChildren(...parts);
}

function show(file: OrderFile): void {
  body.replaceChildren(...lines.map(line => row(file, line)));
  const known = lines.flatMap(line => {
    const item = knownLine(file, line);
    return item === null ? [] : [item];
  });
  const trees = known.reduce((sum, { count }) => sum + count, 0);
  say.textContent =
    known.length === 0
      ? 'The list is empty.'
      : `${trees} ${trees === 1 ? 'tree' : 'trees'}: ${totalWords(file, known, deliveryOf(file, known, place))}`;
  showParcels(file, known);
  const text = orderText(file, known, place, currentChoice()?.name ?? null);
  mail.href = `mailto:${file.email ?? ''}?subject=${encodeURIComponent(`Trees from ${file.yard}`)}&body=${encodeURIComponent(text)}`;
  mail.hidden = known.length === 0 || file.email === null;
  copy.hidden = known.length === 0;
  clear.hidden = lines.length === 0;
  copy.onclick = async () => {
    try {
      await navigator.clipboard.writeText(text);
      say.textContent = 'Copied.';
    } catch {
      say.textContent = 'This browser does not let the page copy. Use the email instead.';
    }
  };
}

function add(file: OrderFile, written: string, wanted: string): void {
  const id = written
    .trim()
    .toLowerCase()
    .replace(/^lot\s+/, '');
  const lot = file.lots.find(each => each.lot.toLowerCase() === id);
  if (lot === undefined) {
    say.textContent = `No lot ${written.trim()} is for sale. The number stands on the page of the lot, such as ${file.lots[0]?.lot ?? ''}.`;
    return;
  }
  const best =
    lot.forms.find(each => each.form === wanted) ?? lot.forms.find(({ ready }) => ready) ?? lot.forms[0];
  if (best === undefined) return;
  const same = lines.find(line => line.lot === lot.lot && line.form === best.form);
  keep(same ? lines : [...lines, { lot: lot.lot, form: best.form, count: 1 }]);
  lotField.value = '';
  show(file);
}

try {
  const file = await fetchJson<OrderFile>('/ordering/lots.json');
  part.hidden = false;
  void followPlace(file);
  onChange(() => void followPlace(file));
  form.addEventListener('submit', event => {
    event.preventDefault();
    add(file, lotField.value, formField.value);
  });
  clear.onclick = () => {
    keep([]);
    show(file);
    lotField.focus();
  };
  const asked = new URLSearchParams(location.search).get('lot');
  if (asked !== null) {
    add(file, asked, '');
    history.replaceState(null, '', location.pathname + location.hash);
  }
} catch {
  part.hidden = true;
}

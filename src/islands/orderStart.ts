/** Loads the list of trees when it is used: where lines were kept, where a lot is to be put on it, or when its form is. */

import { orderKey } from './orderKey.ts';
import listUrl from './orderList.ts?worker&url';

const part = document.querySelector<HTMLElement>('[data-order-list]')!;
const form = part.querySelector('form')!;
let loading: Promise<void> | null = null;
let isThere = false;

function load(): Promise<void> {
  loading ??= import(/* @vite-ignore */ listUrl).then(() => {
    isThere = true;
  });
  return loading;
}

/** What does not load now is asked for again when the form is sent. */
function loadAhead(): void {
  load().catch(() => {
    loading = null;
  });
}

function hasKept(): boolean {
  try {
    return (localStorage.getItem(orderKey) ?? '[]') !== '[]';
  } catch {
    return false;
  }
}

part.hidden = false;
form.addEventListener('focusin', loadAhead, { once: true });
form.addEventListener('submit', event => {
  if (isThere) return;
  event.preventDefault();
  load().then(
    () => form.requestSubmit(),
    () => {
      loading = null;
      part.querySelector('[role="status"]')!.textContent = 'The list did not load. Try again.';
    },
  );
});
if (hasKept() || new URLSearchParams(location.search).has('lot')) loadAhead();

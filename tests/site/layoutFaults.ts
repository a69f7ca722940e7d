/**
 * What is wrong with the layout of the page that is open: text over text, text over pictures or fields, text cut off by its frame, and a
 * page that scrolls sideways. Looks at boxes of lines of text, not at pixels, so it can name what is at fault.
 */

import type { Page } from 'playwright-core';

/** Runs in the page, so it may use nothing from around it. */
function faultsInPage(): string[] {
  interface Box {
    left: number;
    right: number;
    top: number;
    bottom: number;
    words: string;
    owner: Element;
    /** A picture or a field, not a line of text. */
    drawn: boolean;
  }
  /** Part of a line's box that letters fill: ascenders of one line may reach into the leading of the next. */
  const inked = 0.5;
  /** Rounding of layout, px. */
  const slack = 1;

  // Rows that wait with their layout until they are near the screen are measured as they are when they come to it.
  for (const row of document.querySelectorAll<HTMLElement>('tbody, tbody tr'))
    row.style.contentVisibility = 'visible';

  const faults = new Set<string>();
  const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
  if (wide > 0) faults.add(`scrolls sideways by ${wide} px`);

  interface Surroundings {
    /** Cut down to nothing, itself or around it. */
    clipped: boolean;
    /** Inside of something that scrolls, or scrolling itself. */
    scrolled: boolean;
    /** Itself and what is around it, where it hides what does not fit. */
    frames: { at: Element; hidesX: boolean; hidesY: boolean; box: DOMRect }[];
  }
  // Asked once per element: thousands of lines of text have the same few elements around them.
  const known = new Map<Element | null, Surroundings>([
    [null, { clipped: false, scrolled: false, frames: [] }],
  ]);
  const within = (element: Element): Surroundings => {
    const before = known.get(element);
    if (before) return before;
    const { clipPath, overflowX, overflowY, display } = getComputedStyle(element);
    const around = element.parentElement ? within(element.parentElement) : known.get(null)!;
    const inBody = element !== document.body && element !== document.documentElement;
    const [hidesX, hidesY] = [overflowX, overflowY].map(kind => ['hidden', 'clip'].includes(kind));
    const isFrame = inBody && (hidesX || hidesY) && display !== 'inline' && !(element instanceof SVGElement);
    const own = isFrame
      ? [{ at: element, hidesX: hidesX!, hidesY: hidesY!, box: element.getBoundingClientRect() }]
      : [];
    const found = {
      clipped: around.clipped || clipPath === 'inset(50%)',
      scrolled: around.scrolled || (inBody && ['auto', 'scroll'].includes(overflowX)),
      frames: [...own, ...around.frames],
    };
    known.set(element, found);
    return found;
  };
  /** Text for readers of the page aloud, and the way past the head before it has the focus, stand outside on purpose. */
  const unseen = (element: Element): boolean =>
    element.closest('.skip:not(:focus)') !== null ||
    within(element).clipped ||
    !element.checkVisibility({ opacityProperty: true, visibilityProperty: true });
  const inScroller = (element: Element): boolean =>
    element.parentElement !== null && within(element.parentElement).scrolled;
  const short = (text: string) => text.trim().replace(/\s+/g, ' ').slice(0, 40);

  const lines: Box[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const owner = node.parentElement!;
    if (
      !node.nodeValue?.trim() ||
      ['SCRIPT', 'STYLE', 'NOSCRIPT', 'OPTION', 'TITLE', 'DESC'].includes(owner.tagName.toUpperCase())
    )
      continue;
    if (unseen(owner)) continue;
    range.selectNodeContents(node);
    for (const { left, right, top, bottom } of range.getClientRects()) {
      if (right - left < 2 || bottom - top < 2) continue;
      const trim = ((bottom - top) * (1 - inked)) / 2;
      lines.push({
        left: left + slack,
        right: right - slack,
        top: top + trim,
        bottom: bottom - trim,
        words: short(node.nodeValue),
        owner,
        drawn: false,
      });
      const room = document.documentElement.clientWidth + slack;
      if ((right > room || left < -slack) && !inScroller(owner))
        faults.add(`beyond the page: "${short(node.nodeValue)}"`);
      // Clipped by a frame that hides what does not fit.
      for (const { at, hidesX, hidesY, box: frame } of within(owner).frames) {
        const cutX = hidesX && (right > frame.right + slack || left < frame.left - slack);
        const cutY = hidesY && (bottom - trim > frame.bottom + slack || top + trim < frame.top - slack);
        if (cutX || cutY)
          faults.add(`cut off by <${at.localName} class="${at.className}">: "${short(node.nodeValue)}"`);
      }
      const button = owner.closest('button, .button');
      if (button && right > button.getBoundingClientRect().right + slack)
        faults.add(`wider than its button: "${short(node.nodeValue)}"`);
    }
  }

  const pictures: Box[] = [];
  for (const element of document.querySelectorAll(
    // A placeholder lies behind its photograph on purpose.
    'img:not(.placeholder), svg, input, select, button, textarea',
  )) {
    if (unseen(element) || element.parentElement?.closest('svg')) continue;
    const { left, right, top, bottom } = element.getBoundingClientRect();
    if (right - left < 2 || bottom - top < 2) continue;
    pictures.push({
      left: left + slack,
      right: right - slack,
      top: top + slack,
      bottom: bottom - slack,
      words: `<${element.localName} class="${element.getAttribute('class') ?? ''}">`,
      owner: element,
      drawn: true,
    });
    if (right > document.documentElement.clientWidth + slack && !inScroller(element))
      faults.add(`beyond the page: <${element.localName} class="${element.getAttribute('class') ?? ''}">`);
  }

  const boxes = [...lines, ...pictures].sort((a, b) => a.top - b.top);
  const open: Box[] = [];
  for (const box of boxes) {
    for (let index = open.length - 1; index >= 0; index -= 1) {
      if (open[index]!.bottom <= box.top) open.splice(index, 1);
    }
    for (const other of open) {
      if (other.left >= box.right || box.left >= other.right) continue;
      if (other.owner === box.owner && other.words === box.words) continue;
      // A picture or a button lies around the words in it; lines of a sentence never lie over each other.
      const around = other.owner.contains(box.owner) || box.owner.contains(other.owner);
      if (around && (other.drawn || box.drawn)) continue;
      faults.add(`"${other.words}" lies over "${box.words}"`);
    }
    open.push(box);
  }
  return [...faults].slice(0, 20);
}

/** Faults of the layout of the open page at its present width, with all that folds unfolded; empty where there is none. */
export async function layoutFaults(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    // The panel of the visitor's place lies over the page when it is open, and is meant to.
    for (const details of document.querySelectorAll<HTMLDetailsElement>('details:not([data-here])'))
      details.open = true;
  });
  return page.evaluate(faultsInPage);
}

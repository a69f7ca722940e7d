/** How to order, when parcels leave, and where none go. */

import type { Catalogue, PublicYard } from '../../../core/catalogue.ts';
import { type Day, dayInWords } from '../../../core/days.ts';
import { forms } from '../../../core/records/common.ts';
import { lengthInWords } from '../../../core/units.ts';
import { formPath, orderingPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { factList } from '../../parts/facts.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { countInWords, formMeanings, formWords, weekdaysInWords } from '../../words/words.ts';
import { handRows, type LimitRow, limitRows } from './sendingRules.ts';
import { tradeWordsSection } from './tradeWords.ts';

type Sending = PublicYard['sending'];

function limitsOfForm({ formName, cartons }: { formName: string; cartons: readonly LimitRow[] }): Html {
  const rows = cartons.map(({ carton, coldest, hottest, longest }, index) => {
    const head = index === 0 && html`<th scope="rowgroup" rowspan="${cartons.length}">${formName}</th>`;
    return html`<tr>${head}<td>${carton}</td><td>${coldest}</td><td>${hottest}</td><td>${longest}</td></tr>`;
  });
  return html`<tbody>${rows}</tbody>`;
}

function limitsTable(sending: Sending): Html {
  return html`
    <table class="ruled limits">
      <caption>What a parcel may meet at either end, from pick-up to porch</caption>
      <thead>
        <tr>
          <th scope="col">Form</th>
          <th scope="col">Carton</th>
          <th scope="col">No night at or below</th>
          <th scope="col">No day at or above</th>
          <th scope="col">On the way at most</th>
        </tr>
      </thead>
      ${limitRows(sending).map(limitsOfForm)}
    </table>
  `;
}

function forecastPart(sending: Sending): Html {
  return html`
    <h3>By forecast</h3>
    <p>
      Nobody can say in August whether the second week of January will be mild. So the page of your place says of every week and form in how
      many years a trip passes our limits at both ends: <strong>open</strong> where nine of ten do, <strong>by forecast</strong> where three
      of ten or more do, else closed. By forecast means that your tree is packed and waits here for the next sending day with a mild
      forecast for both ends.
    </p>
    ${scrollFrame('Table of limits', limitsTable(sending))}
    <p>These limits are our working figures. No carrier publishes any, and nobody has tried them out on cartons of young fruit trees.</p>
    <h3>What you do with it</h3>
    <ul>
      <li>Be in to take the parcel indoors the same day, or have it held at the depot.</li>
      <li>
        A dormant tree is planted or potted where the ground is open. Where it is not, keep it at 33 to 40 F (1 to 4 C) with its roots
        moist, up to four weeks; where the ground stays frozen we send only to somebody who has such a place.
      </li>
      <li>A tree in leaf travels three days at most, and is never sent to be stored.</li>
    </ul>
  `;
}

function weeksByHand(sending: Sending, asOf: Day): Html | null {
  const rows = handRows(sending, asOf);
  if (rows.length === 0) return null;
  return html`
    <h3>Weeks we have set by hand</h3>
    <ul>${rows.map(row => html`<li>${row}</li>`)}</ul>
  `;
}

function sendingSection({ ordering, sending }: PublicYard, asOf: Day): Html {
  const lead =
    ordering.leadDays === 0
      ? 'the day you order or later'
      : `${countInWords(ordering.leadDays, 'day')} or more after the order`;
  const facts = [
    { label: 'Parcels leave', value: `${weekdaysInWords(sending.weekdays)}, ${lead}` },
    { label: 'On the way', value: `about ${countInWords(sending.transitDays, 'day')}` },
    {
      label: 'Cut back',
      value: `trees taller than ${lengthInWords(sending.cutBackCm)} are cut back to that height for the carton; the lot's page says so`,
    },
  ];
  return html`
    <section aria-labelledby="sending">
      <h2 id="sending">Sending</h2>
      ${factList(facts)}
      ${forecastPart(sending)}
      ${weeksByHand(sending, asOf)}
    </section>
  `;
}

function regionsTable(notTo: Sending['notTo']): Html {
  const rows = notTo.map(
    ({ region, why, checked }) => html`
      <tr>
        <th scope="row">${region}</th>
        <td>${why}</td>
        <td>${dayInWords(checked)}</td>
      </tr>
    `,
  );
  const table = html`
    <table class="ruled rules">
      <caption>Rules change: the date says when we last asked</caption>
      <thead>
        <tr>
          <th scope="col">Region</th>
          <th scope="col">Why</th>
          <th scope="col">Checked</th>
        </tr>
      </thead>
      <tbody>${rows}</tbody>
    </table>
  `;
  return html`
    ${scrollFrame('Table of regions', table)}
    <p>In every other state, check with its plant health authority before ordering.</p>
  `;
}

const everyRegion = html`
  <p>We know of no region we cannot send to. Ask your plant health authority before you order from abroad.</p>
`;

function formsSection(href: (path: string) => string): Html {
  const facts = forms.map(
    form => html`
      <div>
        <dt><a href="${href(formPath(form))}">${formWords[form]}</a></dt>
        <dd>${formMeanings[form]}</dd>
      </div>
    `,
  );
  return html`
    <section aria-labelledby="forms">
      <h2 id="forms">The forms a tree is sold in</h2>
      <dl class="facts">${facts}</dl>
    </section>
  `;
}

function contactSection({ email, phone, post }: PublicYard['contact']): Html {
  return html`
    <section aria-labelledby="contact">
      <h2 id="contact">Write to us</h2>
      <dl class="facts">
        ${email && html`<div><dt>Email</dt><dd><a href="mailto:${email}">${email}</a></dd></div>`}
        ${phone && html`<div><dt>Phone</dt><dd>${phone}</dd></div>`}
        ${post && html`<div><dt>Mailing address</dt><dd>${post}</dd></div>`}
      </dl>
    </section>
  `;
}

/** Shown by its script, which keeps the list; without it the email below does. */
function listSection(): Html {
  const options = forms.map(form => html`<option value="${form}">${formWords[form]}</option>`);
  return html`
    <section aria-labelledby="list" data-order-list hidden>
      <h2 id="list">Your list</h2>
      <p>Put lots on a list, then send it all in one email. The list stays on this device; nothing is sent until you send it.</p>
      <form class="order-add">
        <p>
          <label for="list-lot">Lot</label>
          <input id="list-lot" name="lot" type="text" required autocomplete="off" placeholder="26-layer-01" size="12">
        </p>
        <p>
          <label for="list-form">Form</label>
          <select id="list-form" name="form">${options}</select>
        </p>
        <button type="submit">Put on the list</button>
      </form>
      <ul class="order-rows" data-order-rows></ul>
      <p role="status"></p>
      <div data-order-parcels></div>
      <p class="buttons">
        <a class="button" data-order-mail hidden href="#contact">Write the email</a>
        <button type="button" data-order-copy hidden>Copy the list</button>
        <button type="button" data-order-clear hidden>Clear the list</button>
      </p>
    </section>
  `;
}

export function orderingPage({ yard, asOf }: Catalogue, { links: { href } }: PageContext): Page {
  const { ordering, sending, contact } = yard;
  const paragraphs = ordering.how.split(/\n\s*\n/).map(paragraph => html`<p>${paragraph}</p>`);
  return {
    title: 'How to order',
    description: `How to order from ${yard.name}, on which days parcels leave, and where we do not send.`,
    path: orderingPath,
    scripts: ['orderList'],
    styles: ['ordering'],
    main: html`
      <h1>How to order</h1>
      ${paragraphs}
      ${ordering.link && html`<p><a class="button" href="${ordering.link}">Place an order</a></p>`}
      ${listSection()}
      ${sendingSection(yard, asOf)}
      <section aria-labelledby="not-to">
        <h2 id="not-to">Where we do not send</h2>
        ${sending.notTo.length === 0 ? everyRegion : regionsTable(sending.notTo)}
      </section>
      ${formsSection(href)}
      ${contactSection(contact)}
      ${tradeWordsSection()}
    `,
  };
}

/** Choosing a place by the freeze dates and the coldest night of one's own garden. */

import { monthInWords } from '../../../core/days.ts';
import { attribute, type Html, html } from '../../html.ts';

const months = Array.from({ length: 12 }, (_, index) => ({
  value: String(index + 1).padStart(2, '0'),
  name: monthInWords(index + 1),
}));

interface DateField {
  field: 'last' | 'first';
  label: string;
  /** The month chosen before anything is typed. */
  month: string;
}

function dateFields({ field, label, month }: DateField): Html {
  const options = months.map(
    ({ value, name }) =>
      html`<option value="${value}"${attribute('selected', value === month)}>${name}</option>`,
  );
  return html`
    <fieldset>
      <legend>${label}</legend>
      <span class="pair">
        <label class="unseen" for="${field}-day">${label}, day</label>
        <input id="${field}-day" type="text" inputmode="numeric" size="3" maxlength="2" data-day="${field}">
        <label class="unseen" for="${field}-month">${label}, month</label>
        <select id="${field}-month" data-month="${field}">${options}</select>
      </span>
    </fieldset>
  `;
}

/** `places` are the options of the place whose year the dates are laid over. */
export function ownDatesSection(places: readonly Html[], inFahrenheit: boolean): Html {
  return html`
    <section aria-labelledby="by-dates">
      <h2 id="by-dates">By your own freeze dates</h2>
      <p>
        If you know your garden better than the nearest station does: the usual last freeze of spring, the usual first freeze of fall, and
        the coldest night of a usual winter. They are combined with the climate of the place chosen above, or of the one chosen here.
      </p>
      <form class="ask" data-by-dates>
        ${[
          dateFields({ field: 'last', label: 'Last freeze of spring', month: '04' }),
          dateFields({ field: 'first', label: 'First freeze of fall', month: '10' }),
        ]}
        <p>
          <label for="coldest">Coldest night of a usual winter</label>
          <span class="pair">
            <input id="coldest" type="text" inputmode="text" size="6" data-coldest>
            <label class="unseen" for="coldest-unit">Unit of the coldest night</label>
            <select id="coldest-unit" data-coldest-unit>
              <option value="F"${attribute('selected', inFahrenheit)}>F</option>
              <option value="C"${attribute('selected', !inFahrenheit)}>C</option>
            </select>
          </span>
        </p>
        <p>
          <label for="base-place">Combined with the climate of</label>
          <select id="base-place" data-base-place>${places}</select>
        </p>
        <p><button type="submit">Use these dates</button></p>
      </form>
      <div role="alert"><ul class="problem" data-dates-problem></ul></div>
    </section>
  `;
}

import { describe, expect, it } from 'vitest';
import { attribute, html, safeHtml } from './html.ts';

describe('html', () => {
  it('escapes what is put in, between tags and inside quotes', () => {
    // The five signs of HTML 13.3 "Escaping a string" and 13.1.2.3 "Attributes": & < > and both quotes.
    expect(html`<p title="${`"a" & 'b'`}">${'<script>alert(1)</script>'}</p>`.html).toBe(
      '<p title="&quot;a&quot; &amp; &#39;b&#39;">&lt;script&gt;alert(1)&lt;/script&gt;</p>',
    );
  });

  it('takes pieces and lists of pieces as they are', () => {
    const items = ['a', 'b & c'].map(item => html`<li>${item}</li>`);
    expect(html`<ul>${items}</ul>`.html).toBe('<ul><li>a</li><li>b &amp; c</li></ul>');
  });

  it('writes nothing for null and false, and numbers as they are', () => {
    expect(html`<b>${null}${false}${0}</b>`.html).toBe('<b>0</b>');
  });

  it('writes lists without what is not there', () => {
    expect(html`<p>${[html`a`, null, false, html`b`]}</p>`.html).toBe('<p>ab</p>');
  });
});

describe('attribute', () => {
  it('is escaped, alone for true, and left out for null and false', () => {
    // HTML 13.1.2.3: in double quotes a value may hold anything but a double quote and an ambiguous ampersand; true is the empty-attribute syntax.
    const current = [
      attribute('title', 'a "b" & c'),
      attribute('hidden', true),
      attribute('open', false),
      attribute('id', null),
    ];
    expect(html`<p${current}></p>`.html).toBe('<p title="a &quot;b&quot; &amp; c" hidden></p>');
  });
});

describe('white space', () => {
  it('goes at the edges of blocks and at both ends of a template', () => {
    const piece = html`
      <section>
        <h2>One</h2>
        <ul>
          <li>a</li>
          ${html`<li>b</li>`}
        </ul>
      </section>
    `;
    expect(piece.html).toBe('<section><h2>One</h2><ul><li>a</li><li>b</li></ul></section>');
  });

  it('becomes one space between words, inline elements and values', () => {
    const price = html`
      <p>
        From <b>12</b>
        <i>dollars</i>,
        ${'one'}
        ${'tree'}
      </p>
    `;
    expect(price.html).toBe('<p>From <b>12</b> <i>dollars</i>, one tree</p>');
  });

  it('is not made where there was none', () => {
    expect(html`<tspan>J</tspan><tspan>an</tspan>${'a'}${'b'}`.html).toBe(
      '<tspan>J</tspan><tspan>an</tspan>ab',
    );
  });

  it('stays at the ends of a piece that is written on one line', () => {
    expect(html` and ${'more'} `.html).toBe(' and more ');
  });

  it('stays in what is put in, in quotes and where every space is shown', () => {
    // HTML 4.10.11 and 4.4.3: a text area and preformatted text show their white space.
    const text = html`
      <pre>a
  b</pre>
      <p title="two  spaces"
         class="x"
      >${'in  here'}${safeHtml('<i>\n</i>')}</p>
      <textarea>
 c </textarea>
    `;
    expect(text.html).toBe(
      '<pre>a\n  b</pre><p title="two  spaces" class="x">in  here<i>\n</i></p><textarea>\n c </textarea>',
    );
  });

  it('is not taken from text that looks like markup', () => {
    expect(html`<p data-rule="a > b">1 < 2</p>`.html).toBe('<p data-rule="a > b">1 < 2</p>');
  });
});

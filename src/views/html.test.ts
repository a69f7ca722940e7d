import { describe, expect, it } from 'vitest';
import { html } from './html.ts';

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
});

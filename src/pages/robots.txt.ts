/** Nothing on the site is closed to search engines; pages that should not be listed say so themselves. */
export function GET(): Response {
  return new Response('User-agent: *\nDisallow:\n');
}

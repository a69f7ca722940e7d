import { expect, it } from 'vitest';
import { noInputs } from './route.ts';
import { routesByFile } from './routes.ts';

it('refuses two routes of one address', () => {
  const route = (file: string) => ({ file, inputs: noInputs, make: () => '' });
  const routes = [route('stock.json'), route('robots.txt')];
  expect([...routesByFile(routes).keys()]).toEqual(['stock.json', 'robots.txt']);
  expect(() => routesByFile([...routes, route('stock.json')])).toThrow(
    'two routes of this program make stock.json',
  );
});

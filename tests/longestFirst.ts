/** The order of test files: those that take longest begin first, so that no long one is left over when the rest is done. */

import { BaseSequencer, type TestSpecification } from 'vitest/node';

/**
 * Longest first, seconds not written here since they are those of one machine. Files that build wait for each other
 * (`buildsAlone`), so others stand between them.
 */
const first = [
  'tests/publish/season.test.ts',
  'tests/publish/betweenBuilds.test.ts',
  'tests/site/everyPage.test.ts',
  'tests/site/place.test.ts',
  'tests/site/visitors.test.ts',
  'tests/history.test.ts',
  'tests/site/extremeContent.test.ts',
  'tests/site/search.test.ts',
  'tests/site/guides.test.ts',
  'tests/site/links.test.ts',
  'tests/site/building.test.ts',
  'tests/site/html.test.ts',
  'tests/site/guidesFollow.test.ts',
  'tests/publish/reuse.test.ts',
];

export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) => {
      const at = first.findIndex(name => moduleId.replaceAll('\\', '/').endsWith(name));
      return at < 0 ? first.length : at;
    };
    // A stable sort leaves the others in the usual order, large files first.
    return (await super.sort(files)).sort((a, b) => rank(a) - rank(b));
  }
}

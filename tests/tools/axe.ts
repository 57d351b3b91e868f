import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** What a colour scheme can change: the rest of a page is the same in light and in dark. */
const OF_COLOUR = ['color-contrast', 'link-in-text-block'];

/** What axe finds wrong on the page as it stands, WCAG 2.2 A and AA and good practice, one line a rule. */
export const violations = (page: Page): Promise<string[]> => analyse(page, TAGS);

/** {@link violations}, and those of colours in dark as well; the page is left in light. */
export async function violationsInBoth(page: Page): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await analyse(page, OF_COLOUR);
  await page.emulateMedia({ colorScheme: 'light' });
  return [...dark.map((words) => `dark ${words}`), ...(await violations(page))];
}

/** The page alone has no frames to be asked, and of what is as it should be nothing is told: that is slow. */
async function analyse(page: Page, runOnly: string[]): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page })
    .setLegacyMode()
    .options({ runOnly, resultTypes: ['violations'] })
    .analyze();
  return found.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join(' | ')}`,
  );
}

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds wrong on the page as it stands, WCAG 2.2 A and AA and good practice, one line a rule. */
export async function violations(page: Page): Promise<string[]> {
  const { violations: found } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
  return found.map(
    ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 200)).join(' | ')}`,
  );
}

/** {@link violations} in light and in dark; the page is left in light. */
export async function violationsInBoth(page: Page): Promise<string[]> {
  const all: string[] = [];
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    all.push(...(await violations(page)).map((words) => `${colorScheme} ${words}`));
  }
  return all;
}

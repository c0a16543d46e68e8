import type { BrowserContextOptions, Page } from 'playwright';
import { closePage, openPage, type Opened } from './open-page.ts';

/** Opens an address without motion, hands the page over, and closes it, whatever happens. */
export async function visit(
  address: string,
  options: BrowserContextOptions,
  look: (opened: Opened) => Promise<void>,
): Promise<void> {
  const opened = await openPage(address, { reducedMotion: 'reduce', ...options });
  try {
    await look(opened);
  } finally {
    await closePage(opened);
  }
}

/** Scrolls a step to where it is read: under a figure that stands above, else to the middle of the screen. */
export async function readStep(view: Page, selector: string): Promise<void> {
  await view
    .locator(selector)
    .first()
    .evaluate((step) => {
      const figure = document.querySelector('.figure')!;
      const above = getComputedStyle(figure).getPropertyValue('--figure-above').trim() === '1';
      const box = step.getBoundingClientRect();
      const rest = above ? figure.getBoundingClientRect().height - 1 : (innerHeight - box.height) / 2;
      scrollTo(0, scrollY + box.top - rest);
    });
}

import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright';
import { afterAll, beforeAll, inject } from 'vitest';
import { launchOptions } from '../../../scripts/browser.ts';

/** A page that is open, and what went wrong on it: errors, warnings, refused scripts, requests to another origin. */
export interface Visit {
  view: Page;
  faults: string[];
}

let browser: Browser;

/** Has one browser stand ready for the tests of a file. */
export function useBrowser(): void {
  beforeAll(async () => {
    browser = await chromium.launch(launchOptions(inject('browserPath')));
  });
  afterAll(() => browser.close());
}

/** Opens an address, hands the page over, and closes it, whatever happens. */
export async function visit(
  address: string,
  options: BrowserContextOptions,
  look: (visit: Visit) => Promise<void>,
): Promise<void> {
  const context = await browser.newContext({ reducedMotion: 'reduce', ...options });
  try {
    const view = await context.newPage();
    const faults: string[] = [];
    view.on('pageerror', (error) => faults.push(error.message));
    view.on('console', (message) => {
      if (message.type() === 'error' || message.type() === 'warning') faults.push(message.text());
    });
    view.on('request', (request) => {
      if (new URL(request.url()).origin !== new URL(address).origin) faults.push(`asked ${request.url()}`);
    });
    await view.goto(address, { waitUntil: 'load' });
    await look({ view, faults });
  } finally {
    await context.close();
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

/** Pixels by which the page is wider than the screen. */
export function overflowOf(view: Page): Promise<number> {
  return view.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth);
}

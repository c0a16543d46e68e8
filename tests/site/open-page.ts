import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright';
import { afterAll, beforeAll, inject } from 'vitest';
import { launchOptions } from '../../scripts/browser.ts';

/** A page that is open, and what went wrong on it: errors, warnings, refused scripts, requests to another origin. */
export interface Opened {
  view: Page;
  faults: string[];
}

/** The three screens that most tests look at, in CSS pixels. */
export const screens = [
  { name: 'phone', width: 390, height: 844 },
  { name: 'desktop', width: 1440, height: 900 },
  { name: 'portrait gallery screen', width: 1080, height: 1920 },
] as const;

let browser: Browser;

/** Has one browser stand ready for the tests of a file; outside the tests of the site, of a path that the caller finds. */
export function useBrowser(findPath: () => string = () => inject('browserPath')): void {
  beforeAll(async () => {
    browser = await chromium.launch(launchOptions(findPath()));
  });
  afterAll(() => browser.close());
}

/** Opens an address in a context of its own, on a desktop unless told otherwise; close it with `closePage`. */
export async function openPage(address: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
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
  if (options.javaScriptEnabled !== false) await untilWhole(view);
  return { view, faults };
}

/** Waits until every part of a page that comes later is there. */
export async function untilWhole(view: Page): Promise<void> {
  await view.waitForFunction(() => document.querySelector('.later-part') === null);
}

/** Closes a page with its context. */
export function closePage({ view }: Pick<Opened, 'view'>): Promise<void> {
  return view.context().close();
}

/** Pixels by which the page is wider than the screen. */
export function overflowOf(view: Page): Promise<number> {
  return view.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth);
}

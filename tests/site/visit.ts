import type { Page } from 'playwright';
import { closePage, openPage } from './open-page.ts';

/** Who looks at a page: size of the screen, script, the light of the device. */
export interface Visit {
  width?: number;
  height?: number;
  script?: boolean;
  night?: boolean;
}

/** Opens a page, lets `look` at it, and gives back the errors and foreign requests that it caused. */
export async function visit(
  address: string,
  visitor: Visit,
  look: (view: Page) => Promise<void>,
): Promise<string[]> {
  const { width = 1440, height = 900, script = true, night = false } = visitor;
  const opened = await openPage(address, {
    viewport: { width, height },
    javaScriptEnabled: script,
    colorScheme: night ? 'dark' : 'light',
    reducedMotion: 'reduce',
  });
  await look(opened.view);
  await closePage(opened);
  return opened.faults;
}

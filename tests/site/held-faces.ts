import type { Page } from 'playwright';

/** Has a page sum up its layout shifts from its first moment on; call before it is opened. */
export async function noteShifts(view: Page): Promise<void> {
  await view.addInitScript(() => {
    const seen = { shift: 0 };
    Object.assign(window, { layoutSeen: seen });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.shift += (entry as unknown as { value: number }).value;
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** The layout shift of a page so far, as the browser scores it. */
export function shiftOf(view: Page): Promise<number> {
  return view.evaluate(() => (window as unknown as { layoutSeen: { shift: number } }).layoutSeen.shift);
}

/** Keeps the faces of the pages back until `release` is called or the time is over. */
export async function holdFaces(view: Page, ms?: number): Promise<{ release: () => void }> {
  let release!: () => void;
  const held = new Promise<void>((done) => (release = done));
  await view.route('**/*.woff2', async (route) => {
    await (ms === undefined ? held : new Promise((done) => setTimeout(done, ms)));
    await route.continue().catch(() => undefined); // the page may be gone
  });
  return { release };
}

/** How far each face of a page has come: those of the system (`true`) or ours; one that no letter asks for stays unloaded. */
function faces(view: Page, ofSystem: boolean): Promise<string[]> {
  return view.evaluate(
    (system) =>
      [...document.fonts]
        .filter(({ family }) => family.includes('stand-in') === system)
        .map(({ status }) => status),
    ofSystem,
  );
}

/**
 * Opens a page whose faces are held back until others stand in for them, then lets them come, and says how much moved by then.
 */
export async function shiftWithLateFaces(view: Page, address: string): Promise<number> {
  await noteShifts(view);
  const { release } = await holdFaces(view);
  await view.goto(address, { waitUntil: 'domcontentloaded' });
  while (!(await faces(view, true)).some((status) => status === 'loaded' || status === 'error'))
    await view.waitForTimeout(50);
  release();
  const isOver = (all: readonly string[]) => all.includes('loaded') && !all.includes('loading');
  while (!isOver(await faces(view, false))) await view.waitForTimeout(50);
  await view.evaluate(
    () =>
      new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 200)))),
  );
  return shiftOf(view);
}

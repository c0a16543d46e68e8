/** A page counts as still when it has not been scrolled for so long, in milliseconds. */
const stillMs = 400;

let scrolledAt = 0;
addEventListener('scroll', () => (scrolledAt = performance.now()), { passive: true });

/** Waits for a moment in which the browser has nothing else to do and nobody scrolls. */
export function stillness(): Promise<void> {
  return new Promise((done) => {
    const idle: (call: () => void) => void =
      'requestIdleCallback' in window ? requestIdleCallback : setTimeout;
    const look = () => {
      if (performance.now() - scrolledAt > stillMs) done();
      else setTimeout(() => idle(look), stillMs);
    };
    idle(look);
  });
}

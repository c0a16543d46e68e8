const golden = (3 - Math.sqrt(5)) / 2;

/** A point where a function is largest, and its value there. */
export interface Maximum {
  readonly at: number;
  readonly value: number;
}

/**
 * Largest value of a function of one peak between two ends: parabolic steps guarded by the golden section
 * (Brent 1973, chapter 5). With several peaks it finds one of them.
 */
export function findMaximum(of: (x: number) => number, low: number, high: number, tolerance = 1e-8): Maximum {
  let a = low;
  let b = high;
  let best = a + golden * (b - a);
  let second = best;
  let third = best;
  let atBest = of(best);
  let atSecond = atBest;
  let atThird = atBest;
  let step = 0;
  let last = 0;
  for (let k = 0; k < 200; k++) {
    const middle = (a + b) / 2;
    const near = tolerance * (1 + Math.abs(best));
    if (Math.abs(best - middle) <= 2 * near - (b - a) / 2) break;
    const guess = parabolaStep(best, second, third, atBest, atSecond, atThird);
    const usable = Math.abs(guess) < Math.abs(last / 2) && best + guess > a && best + guess < b;
    last = usable ? step : best < middle ? b - best : a - best;
    step = usable ? guess : golden * last;
    const next = best + (Math.abs(step) >= near ? step : Math.sign(step || 1) * near);
    const atNext = of(next);
    if (atNext >= atBest) {
      if (next < best) b = best;
      else a = best;
      third = second;
      atThird = atSecond;
      second = best;
      atSecond = atBest;
      best = next;
      atBest = atNext;
      continue;
    }
    if (next < best) a = next;
    else b = next;
    if (atNext >= atSecond || second === best) {
      third = second;
      atThird = atSecond;
      second = next;
      atSecond = atNext;
    } else if (atNext >= atThird || third === best || third === second) {
      third = next;
      atThird = atNext;
    }
  }
  return { at: best, value: atBest };
}

/** Step to the top of the parabola through three points; NaN where they do not make one. */
function parabolaStep(x: number, w: number, v: number, atX: number, atW: number, atV: number): number {
  const r = (x - w) * (atX - atV);
  const q = (x - v) * (atX - atW);
  return ((x - v) * q - (x - w) * r) / (2 * (r - q));
}

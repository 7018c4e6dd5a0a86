import type { Locator, Page } from '@playwright/test';

/** One keystroke: when the figures stood in the page, and when they were painted, in ms. */
export type Stroke = { figures: number; painted: number; said: string };

type Watching = Window & { strokes: Stroke[]; stroke: (n: number) => Promise<Stroke> };

/**
 * Times every keystroke in the page itself, from the moment the browser had it:
 * how long until one of the figures beside this one says something else.
 */
export async function watchStrokes(figure: Locator): Promise<void> {
  await figure.evaluate((el) => {
    const strip = el.closest('ul') as HTMLElement;
    const say = (): string => [...strip.querySelectorAll('button')].map((b) => b.ariaLabel).join('\n');
    const here = window as unknown as Watching;
    const waiting = new Map<number, (s: Stroke) => void>();
    let was = say();
    let began: number | null = null;
    here.strokes = [];
    here.stroke = (n) =>
      new Promise((done) => {
        const s = here.strokes[n];
        if (s) done(s);
        else waiting.set(n, done);
      });
    window.addEventListener(
      'keydown',
      (e) => {
        began = e.timeStamp;
        was = say();
      },
      { capture: true },
    );
    new MutationObserver(() => {
      const said = say();
      if (began === null || said === was) return;
      const from = began;
      const figures = performance.now() - from;
      began = null;
      requestAnimationFrame(() => {
        // The message comes after the frame that this callback belongs to.
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => {
          const stroke = { figures, painted: performance.now() - from, said };
          waiting.get(here.strokes.push(stroke) - 1)?.(stroke);
        };
        port2.postMessage(null);
      });
    }).observe(strip, { subtree: true, childList: true, characterData: true, attributes: true });
  });
}

/** Presses a key and waits for its figures; n counts from 0. */
export async function stroke(page: Page, key: string, n: number): Promise<Stroke> {
  await page.keyboard.press(key);
  return page.evaluate((i) => (window as unknown as Watching).stroke(i), n);
}
